import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { log, Outbox } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';

/** Yards that are told of a minute at the same time: the rest of the connections are for people. */
const AT_ONCE = 4;

/** Tells every yard with a running shift that a minute has passed. Practice nights turn their own clocks and are left out. */
@Injectable()
export class Minute {
  constructor(
    private readonly database: DataSource,
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
    const waiting = yards.filter(({ practice }) => !practice).map(({ id }) => id);
    await Promise.all(Array.from({ length: AT_ONCE }, () => this.tellEach(waiting)));
  }

  /**
   * Tells the yard the minute that it now is there; false where it was told already, and where no shift runs. A shift
   * that is over is told one minute more: screens and alarms learn from it that the night has ended.
   */
  async tell(yardId: YardId): Promise<boolean> {
    let told = false;
    await this.outbox.carryOut(yardId, async (deed) => {
      const running = (await this.shifts.running(deed.em, yardId, deed.now)) !== undefined;
      told = await takeMinute(deed.em, yardId, { now: deed.now, running });
      if (told) deed.tell({ kind: 'minute-passed' });
    });
    return told;
  }

  private async tellEach(waiting: YardId[]): Promise<void> {
    for (let id = waiting.shift(); id; id = waiting.shift()) {
      await this.tell(id).catch((error: unknown) => log.error({ err: error, yardId: id }, 'a yard could not be told of a minute'));
    }
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
