import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How a plan was found, what its work was due, and what somebody decided about the work of a night. */
const UP = `
alter table plan add column search jsonb not null default '{"seed":0,"iterations":0,"gapWeightedS":0,"problemHash":0,"planHash":0,"improved":false}';
alter table assignment add column due_at timestamptz;
alter table assignment add column early_s integer not null default 0;
alter table assignment add column pinned boolean not null default false;

create table pin (
  id uuid primary key,
  shift_id uuid not null references shift on delete cascade,
  kind text not null check (kind in ('check', 'task', 'break')),
  pit_id uuid references pit on delete cascade,
  nth_check integer,
  task_id uuid references task on delete cascade,
  break_id uuid references crew_break on delete cascade,
  people uuid[],
  starts_at timestamptz,
  made_at timestamptz not null,
  made_by uuid references crew_member on delete set null,
  check (people is not null or starts_at is not null)
);
create unique index pin_of_work on pin (shift_id, kind, coalesce(pit_id, task_id, break_id), coalesce(nth_check, 0));
`;

const DOWN = `
drop table pin;
alter table assignment drop column pinned;
alter table assignment drop column early_s;
alter table assignment drop column due_at;
alter table plan drop column search;
`;

export class PlansSearched1790000200000 implements MigrationInterface {
  readonly name = 'PlansSearched1790000200000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
