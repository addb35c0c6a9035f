import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The climate of a stack, what meters showed, the pull of a night, how a yard pays, and what meat cost. */
const UP = `
alter table lot
  add column cut_at timestamptz,
  add column split_at timestamptz,
  add column length_deviation_m double precision not null default 0 check (length_deviation_m >= 0);

alter table lot_reading
  add column shown_percent double precision,
  add column basis text check (basis in ('dry', 'wet')),
  add column wood_temp_c double precision,
  add column deviation_frac double precision not null default 0.02,
  add column at_least boolean not null default false;
create index lot_reading_of_lot on lot_reading (lot_id, measured_at);

create table yard_climate (
  yard_id uuid not null references yard on delete cascade,
  month integer not null check (month between 1 and 12),
  temp_c double precision not null,
  humidity_frac double precision not null check (humidity_frac between 0 and 1),
  primary key (yard_id, month)
);

create table wood_pull (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  shift_id uuid not null references shift on delete cascade,
  made_at timestamptz not null,
  is_current boolean not null,
  because text not null check (because in ('asked', 'runs-short', 'stock-gone')),
  loads jsonb not null,
  need_j jsonb not null,
  worth jsonb not null,
  gap_frac double precision not null,
  changes jsonb not null,
  task_ids uuid[] not null
);
create unique index wood_pull_current on wood_pull (yard_id) where is_current;
create index wood_pull_of_shift on wood_pull (shift_id, made_at);

create table pay_rules (
  yard_id uuid primary key references yard on delete cascade,
  paid_break_up_to_s integer not null check (paid_break_up_to_s >= 0),
  night_from text not null,
  night_until text not null,
  night_extra_permille integer not null check (night_extra_permille >= 0),
  overtime_after_s integer not null check (overtime_after_s >= 0),
  overtime_extra_permille integer not null check (overtime_extra_permille >= 0)
);

create table cook_price (
  cook_id uuid primary key references cook on delete cascade,
  meat_cents integer not null check (meat_cents >= 0)
);

create index wood_move_burned on wood_move (yard_id, moved_at) where kind = 'burned';
`;

const DOWN = `
drop index wood_move_burned, lot_reading_of_lot;
drop table cook_price, pay_rules, wood_pull, yard_climate;
alter table lot_reading drop column at_least, drop column deviation_frac, drop column wood_temp_c, drop column basis, drop column shown_percent;
alter table lot drop column length_deviation_m, drop column split_at, drop column cut_at;
`;

export class WoodAndCost1790000500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
