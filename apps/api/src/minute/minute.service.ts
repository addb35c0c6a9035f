import { Injectable } from '@nestjs/common';
import { Cron } from '@nestjs/schedule';
import { type EpochS, MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock, Leading, log, Outbox } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';

/** Yards that are told of a minute at the same time: the rest of the connections are for people. */
const AT_ONCE = 4;

interface Untold {
  readonly id: YardId;
  /** The number of its last fact. */
  readonly seq: number;
}

/** Tells every yard with a running shift that a minute has passed. Practice nights turn their own clocks and are left out. */
@Injectable()
export class Minute {
  /** Yards that the process that leads has told, or found without need of it, in this minute. */
  private settled = { minute: 0, yards: new Set<YardId>() };

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly leading: Leading,
    private readonly outbox: Outbox,
    private readonly shifts: Shifts,
  ) {}

  /** Each process tells the yards whose facts it carries: what it remembers of them serves, and the work of the minute is shared. */
  @Cron('0 * * * * *', { waitForCompletion: true })
  async onTheMinute(): Promise<void> {
    await this.tellEach(await this.untold(({ id, seq }) => this.outbox.carriedLast(id, seq)));
  }

  /** The process that leads tells those that nobody told: quiet ones, those of a process that fell, those where it failed. */
  @Cron('3-59/4 * * * * *', { waitForCompletion: true })
  async afterTheMinute(): Promise<void> {
    if (!this.leading.isMine) return;
    const minute = minuteOf(this.clock.real());
    if (this.settled.minute !== minute) this.settled = { minute, yards: new Set() };
    await this.tellEach(await this.untold(({ id }) => !this.settled.yards.has(id)));
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

  private async untold(which: (yard: Untold) => boolean): Promise<YardId[]> {
    const yards = (await this.database
      .query('select id, seq::float8 as seq from yard left join minute_told on yard_id = id where not practice and (minute is null or minute < $1) order by created_at, id', [minuteOf(this.clock.real())])
      .catch((error: unknown) => {
        log.error({ err: error }, 'the yards could not be told of a minute');
        return [];
      })) as Untold[];
    return yards.filter(which).map(({ id }) => id);
  }

  /** One yard's trouble is not another's: each is told for itself. */
  private async tellEach(yards: YardId[]): Promise<void> {
    const { settled } = this;
    const tellNext = async () => {
      for (let id = yards.shift(); id; id = yards.shift()) {
        const yardId = id;
        await this.tell(yardId).then(() => settled.yards.add(yardId), (error: unknown) => log.error({ err: error, yardId }, 'a yard could not be told of a minute'));
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, tellNext));
  }
}

const minuteOf = (now: EpochS): number => Math.floor(now / MINUTE_S);

/**
 * Takes this minute of the yard for this process. The row is the lock: processes that come at the same time wait for
 * the first and then find the minute taken; when the first dies before it commits, the next has it at once.
 */
async function takeMinute(em: EntityManager, yardId: YardId, { now, running }: { now: EpochS; running: boolean }): Promise<boolean> {
  const taken = (await em.query(
    `insert into minute_told (yard_id, minute, was_running) select $1::uuid, $2::bigint, true where $3::boolean or exists (select from minute_told where yard_id = $1)
     on conflict (yard_id) do update set minute = excluded.minute, was_running = $3
     where minute_told.minute < excluded.minute and (minute_told.was_running or $3) returning yard_id`,
    [yardId, minuteOf(now), running],
  )) as unknown[];
  return taken.length > 0;
}
