import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Readings by month, as they were shown and as they were judged; what is known of each probe's signal; corrections; names that
 * gateways give; what is kept aside; and means of two minutes for good.
 */
const UP = `
alter table reading rename to reading_before;
alter table reading_before rename constraint reading_pkey to reading_before_pkey;
alter index reading_taken rename to reading_before_taken;

create table reading (
  probe_id uuid not null references probe on delete cascade,
  device_taken_at timestamptz not null,
  taken_at timestamptz not null,
  arrived_at timestamptz not null,
  temp_c double precision,
  shown_c real,
  quality smallint not null default 0 check (quality between 0 and 2),
  reason text,
  primary key (probe_id, device_taken_at)
) partition by range (device_taken_at);
create index reading_taken on reading (probe_id, taken_at);
create index reading_arrived on reading using brin (arrived_at);

create function keep_reading_month(instant timestamptz) returns void language plpgsql as $$
declare
  first timestamptz := date_trunc('month', instant at time zone 'UTC') at time zone 'UTC';
  name text := 'reading_' || to_char(instant at time zone 'UTC', 'YYYY_MM');
begin
  if to_regclass(name) is not null then return; end if;
  perform pg_advisory_xact_lock(hashtext('keep_reading_month'));
  if to_regclass(name) is not null then return; end if;
  execute format('create table %I (like reading including defaults including constraints)', name);
  execute format('alter table reading attach partition %I for values from (%L) to (%L)', name, first, (first at time zone 'UTC' + interval '1 month') at time zone 'UTC');
end $$;

select keep_reading_month(month) from (select distinct date_trunc('month', device_taken_at at time zone 'UTC') at time zone 'UTC' as month from reading_before) as months;
insert into reading (probe_id, device_taken_at, taken_at, arrived_at, temp_c, shown_c) select probe_id, device_taken_at, taken_at, arrived_at, temp_c, temp_c from reading_before;
drop table reading_before;

create table probe_signal (
  probe_id uuid primary key references probe on delete cascade,
  signal jsonb not null,
  last_at timestamptz not null,
  temp_c double precision,
  quality smallint not null,
  reason text,
  pace_s double precision not null
);

create table probe_calibration (
  id uuid primary key,
  probe_id uuid not null references probe on delete cascade,
  from_at timestamptz not null,
  against jsonb not null,
  note text,
  crew_member_id uuid references crew_member on delete set null
);
create index probe_calibration_of_probe on probe_calibration (probe_id, from_at);

create table probe_source (
  yard_id uuid not null references yard on delete cascade,
  source text not null,
  probe_id uuid not null references probe on delete cascade,
  primary key (yard_id, source)
);

create table reading_aside (
  yard_id uuid not null references yard on delete cascade,
  source text not null,
  device_taken_at timestamptz not null,
  why text not null check (why in ('probe-unknown', 'time-impossible')),
  device_id uuid references device on delete set null,
  taken_at timestamptz not null,
  arrived_at timestamptz not null,
  body jsonb not null,
  primary key (yard_id, source, device_taken_at)
);

create table reading_thin (
  probe_id uuid not null references probe on delete cascade,
  until_at timestamptz not null,
  mean_c real not null,
  least_c real not null,
  most_c real not null,
  samples smallint not null,
  primary key (probe_id, until_at)
);
create table thinned (
  only_row boolean primary key default true check (only_row),
  arrived_until timestamptz not null
);
`;

const DOWN = `
drop table thinned, reading_thin, reading_aside, probe_source, probe_calibration, probe_signal;
alter table reading rename to reading_by_month;
create table reading (
  probe_id uuid not null references probe on delete cascade,
  device_taken_at timestamptz not null,
  taken_at timestamptz not null,
  temp_c double precision not null,
  arrived_at timestamptz not null
);
insert into reading select probe_id, device_taken_at, taken_at, temp_c, arrived_at from reading_by_month where temp_c is not null;
drop table reading_by_month;
drop function keep_reading_month;
alter table reading add primary key (probe_id, device_taken_at);
create index reading_taken on reading (probe_id, taken_at);
`;

export class ReadingsJudged1790000751000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
