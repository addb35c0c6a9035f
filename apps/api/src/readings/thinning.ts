import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, epochS, toIso } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock, Leading, log } from '../platform/index.js';

/** Means stand for so long, s. */
export const STRETCH_S = 120;
/** Beside the month that runs, the one before it is kept as it was read: a year of them would fill the disk. */
const MONTHS_KEPT = 1;

const ARRIVED = "arrived_at > $1 and arrived_at <= $2 and taken_at <= arrived_at + interval '1 minute'";
const UNTIL = 'to_timestamp(ceil(extract(epoch from taken_at) / $3) * $3)';
/**
 * The means of each probe from the first to the last stretch that something arrived for: a late reading costs its probe the way back to it.
 * A corrected time lies within a day of the device's own, by which months are told apart; said as values, so that the database
 * sees how little `taken_at` leaves.
 */
const MEANS = `
  insert into reading_thin (probe_id, until_at, mean_c, least_c, most_c, samples)
  select reading.probe_id, ${UNTIL}, avg(temp_c), min(temp_c), max(temp_c), count(*)
  from (select probe_id, min(${UNTIL}) - make_interval(secs => $3) as after, max(${UNTIL}) as until from reading where ${ARRIVED} group by probe_id) touched
    join reading on reading.probe_id = touched.probe_id and taken_at > after and taken_at <= until
  where device_taken_at between $4 and $5 and quality < 2 and temp_c is not null group by reading.probe_id, ${UNTIL}
  on conflict (probe_id, until_at) do update set mean_c = excluded.mean_c, least_c = excluded.least_c, most_c = excluded.most_c, samples = excluded.samples`;

/** Makes the means that stay, and lets readings go that are older than last month. The process that leads does it. */
@Injectable()
export class Thinning {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly leading: Leading,
  ) {}

  @Cron('30 */10 * * * *', { waitForCompletion: true })
  async everyTenMinutes(): Promise<void> {
    if (!this.leading.isMine) return;
    await this.thin(this.clock.real()).catch((error: unknown) => log.error({ err: error }, 'readings could not be thinned; the next round does it'));
  }

  /** Takes everything that arrived since the last time into its means, late readings too, lets old months go, and presses the one that ended. */
  async thin(now: EpochS): Promise<void> {
    const before = await this.database.transaction(async (em) => {
      const last = await this.makeMeans(em, now);
      await this.letGo(em, now);
      return last;
    });
    if (before !== undefined) await this.press(before, now);
  }

  /** Answers when it was done last. */
  private async makeMeans(em: EntityManager, now: EpochS): Promise<EpochS | undefined> {
    const [before] = (await em.query('select extract(epoch from arrived_until)::float8 as s from thinned')) as { s: number }[];
    // A command that began before the last time may have been written after it.
    const since = epochS(before ? before.s - STRETCH_S : 0);
    const arrived = [toIso(since), toIso(now)];
    const [taken] = (await em.query(`select min(taken_at) - interval '1 day' as from, max(taken_at) + interval '1 day' as until from reading where ${ARRIVED}`, arrived)) as { from: Date | null; until: Date | null }[];
    if (taken?.from) await em.query(MEANS, [...arrived, STRETCH_S, taken.from, taken.until]);
    await em.query('insert into thinned (arrived_until) values ($1) on conflict (only_row) do update set arrived_until = excluded.arrived_until', [toIso(now)]);
    return before && epochS(before.s);
  }

  /**
   * Readings of many probes come in turns, which leaves the pages of an index by probe half empty; where a month ended, its indexes are made
   * anew, full, while it is read and written on.
   */
  private async press(before: EpochS, now: EpochS): Promise<void> {
    const months = (await this.database.query(
      `select inhrelid::regclass::text as name from pg_inherits where inhparent = 'reading'::regclass
         and inhrelid::regclass::text in (
           select 'reading_' || to_char(month - interval '1 month', 'YYYY_MM') from generate_series(date_trunc('month', $1::timestamptz at time zone 'UTC'), $2::timestamptz at time zone 'UTC', interval '1 month') month
           where month + interval '2 days' > $1::timestamptz at time zone 'UTC' and month + interval '2 days' <= $2::timestamptz at time zone 'UTC')`,
      [toIso(before), toIso(now)],
    )) as { name: string }[];
    for (const { name } of months) {
      const trees = (await this.database.query(`select indexrelid::regclass::text as tree from pg_index join pg_class on pg_class.oid = indexrelid join pg_am on pg_am.oid = relam where indrelid = $1::regclass and amname = 'btree'`, [name])) as { tree: string }[];
      for (const { tree } of trees) await this.database.query(`alter index ${tree} set (fillfactor = 100)`);
      await this.database.query(`reindex table concurrently ${name}`);
    }
  }

  private async letGo(em: EntityManager, now: EpochS): Promise<void> {
    const months = (await em.query(
      `select inhrelid::regclass::text as name from pg_inherits where inhparent = 'reading'::regclass
         and inhrelid::regclass::text < 'reading_' || to_char(($1::timestamptz at time zone 'UTC') - make_interval(months => $2), 'YYYY_MM')`,
      [toIso(now), MONTHS_KEPT],
    )) as { name: string }[];
    for (const { name } of months) await em.query(`drop table ${name}`);
  }
}
