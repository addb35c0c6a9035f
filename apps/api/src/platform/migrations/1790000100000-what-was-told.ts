import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How the air was left at a check, the forecast that was made after it, readings that were not used, and what was learned and let go. */
const UP = `
alter table fire_check
  add column door text check (door in ('shut', 'one-finger', 'usual', 'two-fingers', 'hand-wide')),
  add column damper text check (damper in ('half', 'three-quarters', 'open')),
  add column screen boolean;

alter table fire_estimate add column unused jsonb;

create table fire_told (
  check_id uuid primary key references fire_check on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  looked_at timestamptz not null,
  advised text,
  fan jsonb not null,
  learned jsonb not null
);
create index fire_told_of_pit on fire_told (pit_id, looked_at);

create table learned_set_back (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  at timestamptz not null,
  crew_member_id uuid references crew_member on delete set null,
  reason text not null
);
create index learned_set_back_of_pit on learned_set_back (pit_id, at);

-- What was believed and advised before has no air and no troubles yet: as in everyday firing, and none.
update pit_fire set
  estimate = estimate || '{"air": {"door": "usual", "damper": "open", "screen": false}, "troubles": []}',
  advice = advice || '{"air": null, "expects": null, "alternatives": []}';
`;

const DOWN = `
drop table learned_set_back, fire_told;
alter table fire_estimate drop column unused;
alter table fire_check drop column door, drop column damper, drop column screen;
`;

export class WhatWasTold1790000100000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
