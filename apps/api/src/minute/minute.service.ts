import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Deeds, log, Outbox } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';

/** Tells every yard with a running shift that a minute has passed. Practice nights turn their own clocks and are left out. */
@Injectable()
export class Minute {
  constructor(
    private readonly database: DataSource,
    private readonly deeds: Deeds,
    private readonly outbox: Outbox,
    private readonly yards: Yards,
    private readonly shifts: Shifts,
  ) {}

  /** One yard's trouble is not another's: each is told for itself, and a minute that failed is made up for by the next. */
  @Cron('0 * * * * *', { waitForCompletion: true })
  async onTheMinute(): Promise<void> {
    const yards = await this.yards.all(this.database.manager).catch((error: unknown) => {
      log.error({ err: error }, 'the yards could not be told of a minute');
      return [];
    });
    for (const { id } of yards.filter(({ practice }) => !practice)) {
      await this.tell(id).catch((error: unknown) => log.error({ err: error, yardId: id }, 'a yard could not be told of a minute'));
    }
  }

  /**
   * Tells the yard the minute that it now is there; false where it was told already, and where no shift runs. A shift
   * that is over is told one minute more: screens and alarms learn from it that the night has ended.
   */
  async tell(yardId: YardId): Promise<boolean> {
    const told = await this.deeds.run(yardId, async (deed) => {
      const running = (await this.shifts.running(deed.em, yardId, deed.now)) !== undefined;
      if (!(await takeMinute(deed.em, yardId, { now: deed.now, running }))) return false;
      deed.tell({ kind: 'minute-passed' });
      return true;
    });
    if (told) this.outbox.poke(yardId);
    return told;
  }
}

/**
 * Takes this minute of the yard for this process. The row is the lock: processes that come at the same time wait for
 * the first and then find the minute taken; when the first dies before it commits, the next has it at once.
 */
async function takeMinute(em: EntityManager, yardId: YardId, { now, running }: { now: EpochS; running: boolean }): Promise<boolean> {
  const taken = (await em.query(
    `insert into minute_told (yard_id, minute, was_running) select $1::uuid, $2::bigint, true where $3::boolean or exists (select from minute_told where yard_id = $1)
     on conflict (yard_id) do update set minute = excluded.minute, was_running = $3
     where minute_told.minute < excluded.minute and (minute_told.was_running or $3) returning yard_id`,
    [yardId, Math.floor(now / MINUTE_S), running],
  )) as unknown[];
  return taken.length > 0;
}
