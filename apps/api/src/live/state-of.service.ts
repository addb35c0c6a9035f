import { Injectable } from '@nestjs/common';
import { type LiveChange, type PitView, type YardClock, yardEvent, type YardState } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, later, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Alarms } from '../alarms/index.js';
import { Checks } from '../checks/index.js';
import { Food } from '../food/index.js';
import { Fires } from '../pits/index.js';
import { Plans } from '../planning/index.js';
import { Clock } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { WeatherNow } from '../weather/index.js';
import { WoodViews } from '../wood/index.js';
import { Yards } from '../yards/index.js';
import { changedByAll, type Slice } from './changes.js';
import { pitViews } from './pit-views.js';

/** The fire checks that a screen shows. */
const CHECKS_SHOWN_S = 2 * HOUR_S;
/** From so many missed events on it is cheaper for a board to fetch the whole state. */
const MOST_EVENTS = 500;

/** The changes since a number, and the number that they lead to. */
export interface Since {
  readonly seq: number;
  readonly changes: readonly LiveChange[];
}
type Loaders = { readonly [S in Slice]: () => Promise<YardState[S]> };

/**
 * The state of a yard as the screens show it, put together from what each module shows.
 *
 * Everything is read in one REPEATABLE READ transaction, so a state and the number it bears belong to the same moment.
 * The number is that of the last event that was carried: an event is marked as carried in the transaction that holds
 * all its reactions, so a snapshot that sees number n sees all that events up to n caused. It
 * may also hold a fact whose event is not carried yet; that does no harm, since change n + 1 brings the same slices whole
 * again, from a snapshot at least as new. So a state at n with the changes after n put in place one after the other is right.
 */
@Injectable()
export class StateOf {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
    private readonly fires: Fires,
    private readonly checks: Checks,
    private readonly plans: Plans,
    private readonly food: Food,
    private readonly wood: WoodViews,
    private readonly weather: WeatherNow,
    private readonly alarms: Alarms,
  ) {}

  clockOf(yardId: YardId): YardClock {
    const aheadS = this.clock.aheadS(yardId);
    return { now: toIso(this.clock.now(yardId)), speed: this.clock.speed(yardId), ...(aheadS !== 0 && { aheadS }) };
  }

  /** The whole state. */
  state(yardId: YardId): Promise<YardState> {
    return this.atOneMoment(async (em) => {
      const seq = await carriedSeq(em, yardId);
      const clock = this.clockOf(yardId);
      const load = this.loaders(em, yardId, this.clock.now(yardId));
      return {
        seq,
        clock,
        yard: await load.yard(),
        people: await load.people(),
        shift: await load.shift(),
        pits: await this.pits(em, yardId),
        tasks: await load.tasks(),
        plan: await load.plan(),
        cooks: await load.cooks(),
        services: await load.services(),
        wood: await load.wood(),
        weather: await load.weather(),
        alarms: await load.alarms(),
      };
    });
  }

  /** The number of the last event that was carried in this yard. */
  seq(yardId: YardId): Promise<number> {
    return carriedSeq(this.database.manager, yardId);
  }

  /**
   * What changed after number `after`: a change for every event. When several wait, the last one bears all slices and
   * those before it none. No changes but a new number: too many were missed, and a board has to fetch the whole state.
   */
  since(yardId: YardId, after: number): Promise<Since> {
    return this.atOneMoment(async (em) => {
      const seq = await carriedSeq(em, yardId);
      if (seq <= after || seq - after > MOST_EVENTS) return { seq, changes: [] };
      const rows = (await em.query('select event from outbox where yard_id = $1 and seq > $2 and seq <= $3 order by seq', [yardId, after, seq])) as { event: unknown }[];
      const events = rows.map(({ event }) => yardEvent.parse(event));
      if (events.length !== seq - after) return { seq, changes: [] };
      const clock = this.clockOf(yardId);
      const { slices, pits } = changedByAll(events);
      const load = this.loaders(em, yardId, this.clock.now(yardId));
      const changed: Partial<Record<Slice, unknown>> = {};
      for (const slice of slices) changed[slice] = await load[slice]();
      const views = pits === 'all' || pits.length > 0 ? await this.pits(em, yardId) : [];
      const sent = pits === 'all' ? views : views.filter(({ pit }) => pits.includes(pit.id));
      const gone = pits === 'all' ? [] : pits.filter((id) => !views.some(({ pit }) => pit.id === id));
      const last: LiveChange = {
        seq,
        clock,
        event: events.at(-1)!.kind,
        changed: { ...(changed as LiveChange['changed']), ...(sent.length > 0 && { pits: sent }) },
        ...(gone.length > 0 && { pitsGone: gone }),
      };
      const before = events.slice(0, -1).map(({ kind }, nth): LiveChange => ({ seq: after + 1 + nth, clock, event: kind, changed: {} }));
      return { seq, changes: [...before, last] };
    });
  }

  private atOneMoment<T>(work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.database.transaction('REPEATABLE READ', work);
  }

  private loaders(em: EntityManager, yardId: YardId, now: EpochS): Loaders {
    return {
      yard: () => this.yards.settings(em, yardId),
      people: async () => (await this.yards.crew(em, yardId)).map(({ id, name }) => ({ id, name })),
      shift: async () => this.shifts.view(em, yardId, now, await this.plans.breakTimes(em, yardId)),
      tasks: () => this.tasks.view(em, yardId, now),
      plan: () => this.plans.view(em, yardId),
      cooks: () => this.food.cooks(em, yardId, now),
      services: () => this.food.services(em, yardId, now),
      wood: async () => this.wood.view(em, yardId, now, await this.fires.burnRates(em, yardId, now)),
      weather: () => this.weather.at(em, yardId, now),
      alarms: () => this.alarms.view(em, yardId),
    };
  }

  private async pits(em: EntityManager, yardId: YardId): Promise<PitView[]> {
    const now = this.clock.now(yardId);
    const shift = await this.shifts.running(em, yardId, now);
    return pitViews({
      pits: await this.yards.pits(em, yardId),
      tonight: shift?.pits ?? [],
      fires: await this.fires.view(em, yardId, now),
      checks: await this.checks.recent(em, yardId, later(now, -CHECKS_SHOWN_S)),
    });
  }
}

/** Events are carried in order: those before the first that waits are done, and when none waits, all are. */
async function carriedSeq(em: EntityManager, yardId: YardId): Promise<number> {
  const [row] = (await em.query(
    'select coalesce((select min(seq) - 1 from outbox where yard_id = $1 and done_at is null), (select seq from yard where id = $1)) as seq',
    [yardId],
  )) as [{ seq: string }];
  return Number(row.seq);
}
