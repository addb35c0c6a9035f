import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Every table of a night. Physical columns are double precision with the unit in the name; money whole cents; time timestamptz. */
const UP = `
create table yard (
  id uuid primary key,
  name text not null,
  time_zone text not null,
  units text not null check (units in ('us', 'metric')),
  language text not null check (language in ('en', 'es')),
  plan_width_m double precision not null,
  plan_height_m double precision not null,
  plan_top_deg double precision not null,
  wood_x_m double precision not null,
  wood_y_m double precision not null,
  walk_speed_m_per_s double precision not null check (walk_speed_m_per_s > 0),
  screen_diagonal_m double precision not null,
  view_distance_m double precision not null,
  practice boolean not null default false,
  seq bigint not null default 0,
  created_at timestamptz not null
);

create table pit (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  name text not null,
  x_m double precision not null,
  y_m double precision not null,
  fire_end text not null check (fire_end in ('left', 'right')),
  fire_end_heading_deg double precision not null,
  chamber_length_m double precision not null check (chamber_length_m > 0),
  chamber_diameter_m double precision not null check (chamber_diameter_m > 0),
  firebox_length_m double precision not null check (firebox_length_m > 0),
  firebox_diameter_m double precision not null check (firebox_diameter_m > 0),
  steel_thickness_m double precision not null check (steel_thickness_m > 0),
  stack_height_m double precision not null check (stack_height_m > 0),
  stack_diameter_m double precision not null check (stack_diameter_m > 0),
  band_low_c double precision not null,
  band_high_c double precision not null check (band_high_c > band_low_c),
  retired boolean not null default false
);
create unique index pit_name on pit (yard_id, lower(name));

create table zone (
  pit_id uuid not null references pit on delete cascade,
  nth integer not null check (nth >= 0),
  length_m double precision not null check (length_m > 0),
  primary key (pit_id, nth)
);

create table probe (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  name text not null,
  zone_nth integer not null,
  removed boolean not null default false
);
create index probe_of_pit on probe (pit_id);

create table crew_member (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  name text not null,
  role text not null check (role in ('crew', 'lead', 'manager')),
  language text not null check (language in ('en', 'es')),
  rate_cents_per_hour integer not null check (rate_cents_per_hour >= 0),
  pin_hash text,
  has_left boolean not null default false
);
create unique index crew_member_name on crew_member (yard_id, lower(name));

create table skill (
  crew_member_id uuid not null references crew_member on delete cascade,
  skill text not null check (skill in ('fire', 'food', 'lifting', 'saw')),
  primary key (crew_member_id, skill)
);

create table device (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  name text not null,
  kind text not null check (kind in ('wall', 'hand', 'gateway')),
  token_hash bytea not null unique,
  enrolled_at timestamptz not null,
  last_seen_at timestamptz,
  revoked_at timestamptz
);

create table device_code (
  code_hash bytea primary key,
  yard_id uuid not null references yard on delete cascade,
  kind text not null check (kind in ('wall', 'hand', 'gateway')),
  expires_at timestamptz not null,
  used_at timestamptz
);

create table session (
  token_hash bytea primary key,
  device_id uuid not null references device on delete cascade,
  crew_member_id uuid not null references crew_member on delete cascade,
  began_at timestamptz not null,
  last_used_at timestamptz not null,
  ended_at timestamptz
);

create table pin_failure (
  crew_member_id uuid not null references crew_member on delete cascade,
  device_id uuid not null references device on delete cascade,
  in_a_row integer not null,
  wait_until timestamptz,
  primary key (crew_member_id, device_id)
);

create table shift (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  starts_at timestamptz not null,
  ends_at timestamptz not null check (ends_at > starts_at)
);
create index shift_of_yard on shift (yard_id, starts_at);

create table shift_person (
  shift_id uuid not null references shift on delete cascade,
  crew_member_id uuid not null references crew_member on delete cascade,
  starts_at timestamptz not null,
  ends_at timestamptz not null check (ends_at > starts_at),
  presence text not null check (presence in ('late', 'away', 'here')),
  presence_from timestamptz,
  presence_until timestamptz,
  primary key (shift_id, crew_member_id)
);

create table absence (
  shift_id uuid not null,
  crew_member_id uuid not null,
  from_at timestamptz not null,
  until_at timestamptz not null check (until_at > from_at),
  primary key (shift_id, crew_member_id, from_at),
  foreign key (shift_id, crew_member_id) references shift_person on delete cascade
);

create table crew_break (
  id uuid primary key,
  shift_id uuid not null references shift on delete cascade,
  crew_member_id uuid not null references crew_member on delete cascade,
  length_s integer not null check (length_s > 0),
  earliest_at timestamptz not null,
  latest_at timestamptz not null,
  began_at timestamptz,
  ended_at timestamptz
);
create index crew_break_of_shift on crew_break (shift_id);

create table shift_pit (
  shift_id uuid not null references shift on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  band_low_c double precision not null,
  band_high_c double precision not null check (band_high_c > band_low_c),
  light_at timestamptz not null,
  primary key (shift_id, pit_id)
);

create table task (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  shift_id uuid references shift on delete cascade,
  kind text not null,
  pit_id uuid references pit on delete cascade,
  earliest_at timestamptz not null,
  due_at timestamptz not null,
  latest_at timestamptz not null,
  length_s integer not null check (length_s > 0),
  people integer not null check (people in (1, 2)),
  note text,
  done_at timestamptz,
  done_by uuid references crew_member on delete set null
);
create index task_of_yard on task (yard_id, due_at);

create table lot (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  name text not null,
  species text not null,
  length_m double precision not null,
  thickness_m double precision not null,
  moisture_frac double precision not null,
  bought_at timestamptz not null,
  bought_pieces integer not null check (bought_pieces > 0),
  price_cents integer not null check (price_cents >= 0)
);
create unique index lot_name on lot (yard_id, lower(name));

create table lot_reading (
  id uuid primary key,
  lot_id uuid not null references lot on delete cascade,
  moisture_frac double precision not null,
  measured_at timestamptz not null,
  crew_member_id uuid references crew_member on delete set null
);

create table service (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  name text not null,
  ready_by timestamptz not null,
  portions integer not null check (portions >= 0)
);

create table cook (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  service_id uuid references service on delete set null,
  cut text not null,
  shape text not null,
  pieces integer not null check (pieces > 0),
  weight_kg double precision not null check (weight_kg > 0),
  comes_off_at timestamptz,
  on_at timestamptz,
  off_at timestamptz,
  yield_kg double precision
);
create index cook_of_yard on cook (yard_id);

create table placement (
  id uuid primary key,
  cook_id uuid not null references cook on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  zone_nth integer not null,
  pieces integer not null check (pieces > 0),
  from_at timestamptz not null,
  until_at timestamptz
);
create index placement_now on placement (cook_id) where until_at is null;

create table reading (
  probe_id uuid not null references probe on delete cascade,
  device_taken_at timestamptz not null,
  taken_at timestamptz not null,
  temp_c double precision not null,
  arrived_at timestamptz not null,
  primary key (probe_id, device_taken_at)
);
create index reading_taken on reading (probe_id, taken_at);

create table fire_check (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  pit_id uuid not null references pit on delete cascade,
  crew_member_id uuid references crew_member on delete set null,
  seen_at timestamptz not null,
  device_seen_at timestamptz not null,
  arrived_at timestamptz not null,
  clock_offset_s double precision not null,
  bed text not null check (bed in ('low', 'fair', 'full')),
  split_left text not null check (split_left in ('coals', 'some', 'most')),
  raked boolean not null,
  splits integer not null check (splits >= 0),
  size text not null,
  lot_id uuid references lot on delete set null,
  fire_end_temp_c double precision,
  stack_end_temp_c double precision,
  smoke text,
  note text,
  was_due_at timestamptz,
  marks text[] not null
);
create index fire_check_of_pit on fire_check (pit_id, seen_at);

create table wood_move (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  lot_id uuid not null references lot on delete cascade,
  pit_id uuid references pit on delete cascade,
  kind text not null check (kind in ('bought', 'pulled', 'brought-back', 'burned', 'recounted')),
  stack_pieces integer not null,
  cart_pieces integer not null,
  moved_at timestamptz not null,
  crew_member_id uuid references crew_member on delete set null,
  check_id uuid references fire_check on delete set null,
  reason text
);
create index wood_move_of_lot on wood_move (lot_id, pit_id);

create table pit_fire (
  pit_id uuid primary key references pit on delete cascade,
  yard_id uuid not null references yard on delete cascade,
  belief bytea not null,
  believed_at timestamptz not null,
  estimate jsonb not null,
  due jsonb,
  advice jsonb
);

create table fire_look (
  pit_id uuid primary key references pit on delete cascade,
  check_id uuid references fire_check on delete set null,
  looked_at timestamptz not null,
  belief bytea not null
);
alter table pit_fire alter column belief set storage external;
alter table fire_look alter column belief set storage external;

create table fire_estimate (
  pit_id uuid not null references pit on delete cascade,
  at timestamptz not null,
  temp_c double precision not null,
  measured boolean not null,
  bed_kg double precision not null,
  primary key (pit_id, at)
);

create table weather (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  seen_at timestamptz not null,
  wind_m_per_s double precision not null,
  gust_m_per_s double precision not null,
  from_deg double precision not null,
  ambient_temp_c double precision not null,
  rain_frac double precision not null
);
create index weather_of_yard on weather (yard_id, seen_at);

create table plan (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  shift_id uuid not null references shift on delete cascade,
  made_at timestamptz not null,
  is_current boolean not null,
  cause jsonb not null,
  unplaced jsonb not null,
  load jsonb not null,
  changes jsonb not null,
  late_weighted_s integer not null,
  bound_weighted_s integer not null,
  evenness_frac double precision
);
create index plan_of_yard on plan (yard_id, made_at);
create unique index plan_current on plan (yard_id) where is_current;

create table assignment (
  plan_id uuid not null references plan on delete cascade,
  nth integer not null,
  kind text not null check (kind in ('check', 'task', 'break')),
  pit_id uuid references pit on delete cascade,
  nth_check integer,
  task_id uuid references task on delete cascade,
  break_id uuid references crew_break on delete cascade,
  people uuid[] not null,
  starts_at timestamptz not null,
  ends_at timestamptz not null,
  late_s integer not null,
  past_latest_s integer not null,
  primary key (plan_id, nth)
);

create table alarm (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  kind text not null,
  pit_id uuid references pit on delete cascade,
  state text not null check (state in ('unacknowledged', 'acknowledged', 'returned-unacknowledged', 'normal')),
  raised_at timestamptz not null,
  returned_at timestamptz,
  acknowledged_at timestamptz,
  acknowledged_by uuid references crew_member on delete set null
);
create index alarm_open on alarm (yard_id) where state <> 'normal';

create table handover (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  signed_at timestamptz not null,
  signed_by uuid references crew_member on delete set null,
  to_person uuid references crew_member on delete set null,
  note text not null,
  summary jsonb not null
);

create table audit_entry (
  id bigint generated always as identity primary key,
  yard_id uuid not null references yard on delete cascade,
  at timestamptz not null,
  crew_member_id uuid references crew_member on delete set null,
  device_id uuid references device on delete set null,
  command text not null,
  command_key uuid not null,
  body jsonb not null
);
create index audit_entry_of_yard on audit_entry (yard_id, at);

create table command_key (
  yard_id uuid not null references yard on delete cascade,
  key uuid not null,
  command text not null,
  body_hash bytea not null,
  reply jsonb,
  at timestamptz not null,
  primary key (yard_id, key)
);

create table outbox (
  yard_id uuid not null references yard on delete cascade,
  seq bigint not null,
  event jsonb not null,
  at timestamptz not null,
  done_at timestamptz,
  primary key (yard_id, seq)
);
create index outbox_waiting on outbox (yard_id, seq) where done_at is null;

create table minute_told (
  yard_id uuid primary key references yard on delete cascade,
  minute bigint not null,
  was_running boolean not null
);
`;

const TABLES = [...UP.matchAll(/^create table (\w+)/gm)].map((match) => match[1]);

export class TheNight1790000000000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`drop table ${TABLES.join(', ')}`);
  }
}
