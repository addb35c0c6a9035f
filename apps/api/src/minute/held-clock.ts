import { type BeforeApplicationShutdown, Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import { MINUTE_S, type YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Clock, Ids, Leading, log, Outbox } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';

const LOOK_MS = 1000;
/** Whether a night still runs is asked so often, in looks. */
const ASK_EVERY = 10;

/**
 * When the machine's clock is set while a night runs, tells it once to each yard whose night it is; takes the new time over when no
 * night runs any more. Until then the house goes by the time of before (`Clock`).
 */
@Injectable()
export class HeldClock implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private toldS = 0;
  private looks = 0;
  private timer: NodeJS.Timeout | undefined;
  private stopped = false;

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly leading: Leading,
    private readonly outbox: Outbox,
    private readonly shifts: Shifts,
  ) {}

  onApplicationBootstrap(): void {
    // What another process of this machine had told already, and this one goes by from its start.
    this.toldS = this.clock.aheadS();
    const next = () => {
      if (this.stopped) return;
      this.timer = setTimeout(() => void this.look().catch((error: unknown) => log.error({ err: error }, 'what the clock did was not told; it is tried again')).then(next), LOOK_MS).unref();
    };
    next();
  }

  beforeApplicationShutdown(): void {
    this.stopped = true;
    clearTimeout(this.timer);
  }

  async look(): Promise<void> {
    const aheadS = this.clock.aheadS();
    const byS = aheadS - this.toldS;
    this.looks += 1;
    if (byS === 0 && (aheadS === 0 || this.looks % ASK_EVERY !== 0)) return;
    const nights = await this.nightsThatRun();
    if (nights.length === 0) return this.takeOver(aheadS);
    if (byS === 0) return;
    log.warn({ byS, aheadS }, 'the clock of this machine was set; the night goes on by the time of before');
    if (this.leading.isMine) for (const yardId of nights) await this.tell(yardId, byS, aheadS);
    this.toldS = aheadS;
  }

  private async tell(yardId: YardId, byS: number, aheadS: number): Promise<void> {
    await this.outbox.carryOut(yardId, async (deed) => {
      deed.record({ personId: null, deviceId: null, command: 'clock-step', key: this.ids.next(), body: { byS, aheadS } });
      deed.tell({ kind: 'clock-stepped', byS });
    });
  }

  private async nightsThatRun(): Promise<YardId[]> {
    const yards = (await this.database.query('select id from yard where not practice order by created_at, id')) as { readonly id: YardId }[];
    const running = await Promise.all(yards.map(async ({ id }) => ((await this.shifts.running(this.database.manager, id, this.clock.now(id))) ? [id] : [])));
    return running.flat();
  }

  /** A minute that was told by the old time and is still to come by the new one may come again. */
  private async takeOver(aheadS: number): Promise<void> {
    this.clock.takeOver();
    this.toldS = 0;
    await this.database.query('update minute_told set minute = $1 from yard where yard.id = yard_id and not practice and minute > $1', [Math.floor(this.clock.real() / MINUTE_S)]);
    log.warn({ aheadS }, 'the clock of this machine was set, and no night runs: the house goes by it');
  }
}
