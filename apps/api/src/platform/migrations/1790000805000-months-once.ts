import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The table of a month, as the house asks for it before each batch of readings. `isThere` says whether it is there once the lock is held. */
const keepsMonth = (isThere: string) => `
create or replace function keep_reading_month(instant timestamptz) returns void language plpgsql as $$
declare
  first timestamptz := date_trunc('month', instant at time zone 'UTC') at time zone 'UTC';
  name text := 'reading_' || to_char(instant at time zone 'UTC', 'YYYY_MM');
begin
  if to_regclass(name) is not null then return; end if;
  perform pg_advisory_xact_lock(hashtext('keep_reading_month'));
  if ${isThere} then return; end if;
  execute format('create table %I (like reading including defaults including constraints)', name);
  execute format('alter table reading attach partition %I for values from (%L) to (%L)', name, first, (first at time zone 'UTC' + interval '1 month') at time zone 'UTC');
end $$;
`;

/**
 * Two gateways that send the first readings of a month at once make its table once. Whoever waited for the lock looks for the table
 * with a question of its own: to_regclass still remembers that there was none.
 */
export class MonthsOnce1790000805000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(keepsMonth('exists (select from pg_class where oid in (select inhrelid from pg_inherits where inhparent = \'reading\'::regclass) and relname = name)'));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(keepsMonth('to_regclass(name) is not null'));
  }
}
