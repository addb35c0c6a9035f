import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A yard's cuts, the food code it is held to, the log of its food, what its cooks taught, and when each will be done. */
const UP = `
alter table cook add column forecast jsonb;
alter table cook add column taught boolean not null default false;
alter table alarm add column cook_id uuid references cook on delete cascade;
alter table alarm add column limit_name text;

create table cut (
  yard_id uuid not null references yard on delete cascade,
  code text not null,
  settings jsonb not null,
  changed_at timestamptz not null,
  primary key (yard_id, code)
);

create table food_limits (
  yard_id uuid primary key references yard on delete cascade,
  limits jsonb not null,
  changed_at timestamptz not null
);

create table food_learned (
  yard_id uuid not null references yard on delete cascade,
  kind text not null check (kind in ('cut', 'pit')),
  ref text not null,
  effects jsonb not null,
  primary key (yard_id, kind, ref)
);

create table food_entry (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  cook_id uuid not null references cook on delete cascade,
  kind text not null check (kind in ('reading', 'wrapped', 'action')),
  at timestamptz not null,
  device_at timestamptz not null,
  recorded_at timestamptz not null,
  stage text check (stage in ('cooking', 'holding', 'cooling', 'cold', 'reheating', 'out')),
  temp_c double precision,
  wrapped_in text check (wrapped_in in ('foil', 'paper')),
  action text,
  limit_name text,
  note text,
  corrects uuid references food_entry on delete cascade,
  crew_member_id uuid references crew_member on delete set null,
  device_id uuid not null references device,
  by_probe boolean not null
);
create index food_entry_of_cook on food_entry (cook_id, at);
`;

const DOWN = `
drop table food_entry;
drop table food_learned;
drop table food_limits;
drop table cut;
alter table alarm drop column limit_name;
alter table alarm drop column cook_id;
alter table cook drop column taught;
alter table cook drop column forecast;
`;

export class WhatFoodDid1790000300000 implements MigrationInterface {
  readonly name = 'WhatFoodDid1790000300000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
