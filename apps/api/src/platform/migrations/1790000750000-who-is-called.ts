import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Shelving and suppression of alarms, their first cause, whom they call, and each call as a record. */
const UP = `
alter table alarm add column probe_id uuid references probe on delete cascade;
alter table alarm add column device_id uuid references device on delete cascade;
alter table alarm add column shelved_until timestamptz;
alter table alarm add column shelved_by uuid references crew_member on delete set null;
alter table alarm add column shelf_way text check (shelf_way in ('timed', 'one-shot'));
alter table alarm add column suppressed_by text check (suppressed_by in ('after-check', 'check-due'));
alter table alarm add column under_id uuid;
alter table alarm add column called_at timestamptz;
alter table alarm add column told_tier text check (told_tier in ('holder', 'lead', 'everyone'));
alter table alarm add column told uuid[] not null default '{}';

create table alarm_call (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  alarm_id uuid not null references alarm on delete cascade,
  at timestamptz not null,
  people uuid[] not null
);
create index alarm_call_of_yard on alarm_call (yard_id, at);
`;

const DOWN = `
drop table alarm_call;
alter table alarm drop column told, drop column told_tier, drop column called_at, drop column under_id, drop column suppressed_by,
  drop column shelf_way, drop column shelved_by, drop column shelved_until, drop column device_id, drop column probe_id;
`;

export class WhoIsCalled1790000750000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
