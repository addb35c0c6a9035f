import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, epochS, toIso } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock, Leading, log } from '../platform/index.js';

/** Means stand for so long, s. */
export const STRETCH_S = 120;
/** Beside the month that runs, the one before it is kept as it was read: a year of them would fill the disk. */
const MONTHS_KEPT = 1;

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

  /** Takes everything that arrived since the last time into its means, late readings too, then lets old months go. */
  async thin(now: EpochS): Promise<void> {
    await this.database.transaction(async (em) => {
      await this.makeMeans(em, now);
      await this.letGo(em, now);
    });
  }

  private async makeMeans(em: EntityManager, now: EpochS): Promise<void> {
    const [before] = (await em.query('select extract(epoch from arrived_until)::float8 as s from thinned')) as { s: number }[];
    // A command that began before the last time may have been written after it.
    const since = epochS(before ? before.s - STRETCH_S : 0);
    await em.query(
      `insert into reading_thin (probe_id, until_at, mean_c, least_c, most_c, samples)
       select reading.probe_id, until_at, avg(temp_c), min(temp_c), max(temp_c), count(*)
       from (
         select distinct probe_id, to_timestamp(ceil(extract(epoch from taken_at) / $3) * $3) as until_at from reading
         where arrived_at > $1 and arrived_at <= $2 and taken_at <= arrived_at + interval '1 minute'
       ) as touched join reading on reading.probe_id = touched.probe_id and taken_at > until_at - make_interval(secs => $3) and taken_at <= until_at
         and device_taken_at between until_at - interval '1 day' and until_at + interval '1 day'
       where quality < 2 and temp_c is not null group by reading.probe_id, until_at
       on conflict (probe_id, until_at) do update set mean_c = excluded.mean_c, least_c = excluded.least_c, most_c = excluded.most_c, samples = excluded.samples`,
      [toIso(since), toIso(now), STRETCH_S],
    );
    await em.query('insert into thinned (arrived_until) values ($1) on conflict (only_row) do update set arrived_until = excluded.arrived_until', [toIso(now)]);
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
