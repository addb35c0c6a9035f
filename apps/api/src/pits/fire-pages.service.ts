import { Injectable } from '@nestjs/common';
import type { Done, FirePage, RouteInput, Routes } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, later, type PitId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Clock, Commands, Ids, refused } from '../platform/index.js';
import { Readings } from '../readings/index.js';
import { Yards } from '../yards/index.js';
import { firePageOf } from './fire-page.js';
import { LearnedSetBackRow } from './learned-set-back.row.js';
import { type PitNight, REMEMBERS_S, ToldStore } from './told.store.js';

/** So many nights can be looked back at. */
const MOST_NIGHTS = 30;
/** A fire does not end with its shift: so much after it is still that night, unless the next has begun. */
const AFTER_S = 3 * HOUR_S;

/** The two sides of every forecast, and what a pit has taught. */
@Injectable()
export class FirePages {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly commands: Commands,
    private readonly ids: Ids,
    private readonly yards: Yards,
    private readonly readings: Readings,
    private readonly store: ToldStore,
  ) {}

  /** One fire over one night, the last one unless said. Refuses with `pit-unknown`, and with `shift-unknown` for a night it did not burn in. */
  async page(actor: Actor, { pitId, shiftId }: RouteInput<Routes['firePage']>): Promise<FirePage> {
    const em = this.database.manager;
    const now = this.clock.now(actor.yardId);
    const pit = await this.yards.pit(em, pitId, actor.yardId);
    const nights = await this.store.nights(em, pitId, now, MOST_NIGHTS);
    const nth = shiftId === undefined ? 0 : nights.findIndex((night) => night.shiftId === shiftId);
    if (nth < 0) refused('shift-unknown', `${pit.name} did not burn in that shift. Choose one of its nights.`, { pit: pit.name });
    const span = spanOf(nights, nth, now);
    const line = span ? await this.store.line(em, pitId, span.from, span.until) : [];
    return firePageOf({
      pitId, now, nights, line,
      night: nights[nth],
      told: span ? await this.store.told(em, pitId, span.from, span.until) : [],
      touches: span ? await this.store.touches(em, pitId, span.from, span.until) : [],
      course: await this.store.course(em, pitId, later(now, -REMEMBERS_S)),
      setBacks: await this.store.setBacks(em, pitId, later(now, -REMEMBERS_S)),
      unused: [
        ...line.flatMap(({ at, unused }) => unused.map((one) => ({ ...one, at }))),
        ...(span ? await this.early(em, pitId, pit.zones.length, span) : []),
      ].sort((a, b) => a.at - b.at),
    });
  }

  /** Lets go of what was learned of a pit: its fire goes on from its set-up values at once, and so does its next night. */
  setBack(actor: Actor, command: RouteInput<Routes['setLearnedBack']>): Promise<Done> {
    return this.commands.run(actor, 'set-learned-back', command, async (deed) => {
      const { pitId, reason } = command;
      await this.yards.pit(deed.em, pitId, deed.yardId);
      const since = later(deed.now, -REMEMBERS_S);
      const last = (await this.store.setBacks(deed.em, pitId, since)).at(-1)?.at ?? since;
      const taught = (await this.store.course(deed.em, pitId, last)).some(({ at }) => at > last);
      if (!taught) refused('nothing-learned', 'Nothing has been learned of this pit since it was set up or set back. Let it burn and look at it first.');
      await deed.em.insert(LearnedSetBackRow, {
        id: this.ids.next(), yardId: deed.yardId, pitId, at: new Date(deed.now * 1000), crewMemberId: actor.person?.id ?? null, reason,
      });
      deed.tell({ kind: 'learned-set-back', pitId });
      return { done: true };
    });
  }

  /** Readings that said they were taken after they arrived. */
  private async early(em: EntityManager, pitId: PitId, zones: number, span: { readonly from: EpochS; readonly until: EpochS }) {
    const readings = await this.readings.fromTheFuture(em, pitId, span);
    return readings.map(({ at, zone }) => ({ at, end: zone + 0.5 <= zones / 2 ? ('fire-end' as const) : ('stack-end' as const), why: 'from-the-future' as const, tempC: null }));
  }
}

/** From lighting until three hours after the shift, until the next fire is lit, or until now. */
function spanOf(nights: readonly PitNight[], nth: number, now: EpochS): { readonly from: EpochS; readonly until: EpochS } | undefined {
  const night = nights[nth];
  if (!night) return undefined;
  const next = nights[nth - 1];
  const ends = [now, later(night.endsAt, AFTER_S), ...(next ? [next.lightAt] : [])];
  return { from: night.lightAt, until: ends.reduce((first, at) => (at < first ? at : first)) };
}
