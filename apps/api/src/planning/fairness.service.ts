import { Injectable } from '@nestjs/common';
import type { FairnessView, ShareView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, type PersonId, type ShiftId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type AheadOf, carriedOver, LEAD_S, type LongShare, type RunningShift, type Share, sharesTogether } from '@stokehold/domain/shift';
import { sharesOfNight } from '@stokehold/scheduling/night';
import { DataSource, type EntityManager } from 'typeorm';
import { Checks } from '../checks/index.js';
import { type Actor, Clock } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { PlanStore } from './plan.store.js';

/** How far back nights are evened out. Source: common practice, no source. */
const LOOKED_BACK_S = 28 * 24 * HOUR_S;

interface Moment {
  readonly em: EntityManager;
  readonly yardId: YardId;
}

/** How work is shared over the nights: what each had, and what somebody has ahead when a night begins. */
@Injectable()
export class Fairness {
  /** What was carried into a shift does not change while it runs. */
  private readonly known = new Map<ShiftId, ReadonlyMap<PersonId, AheadOf>>();

  constructor(
    private readonly shifts: Shifts,
    private readonly checks: Checks,
    private readonly tasks: Tasks,
    private readonly yards: Yards,
    private readonly plans: PlanStore,
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  /** What each of this shift has done more than their share over the last nights. */
  async carried(moment: Moment, shift: RunningShift): Promise<ReadonlyMap<PersonId, AheadOf>> {
    const ids = shift.people.map(({ id }) => id);
    const known = this.known.get(shift.id);
    if (known && ids.every((id) => known.has(id))) return known;
    const carried = carriedOver(await this.before(moment, shift.from), ids);
    this.known.set(shift.id, carried);
    return carried;
  }

  async view({ yardId }: Actor): Promise<FairnessView> {
    const moment = { em: this.database.manager, yardId };
    const now = this.clock.now(yardId);
    const shift = await this.shifts.running(moment.em, yardId, now);
    const before = await this.before(moment, shift?.from ?? now);
    const tonight = shift ? await this.tonight(moment, shift, now) : [];
    const crew = await this.yards.crew(moment.em, yardId);
    return {
      since: toIso(later(now, -LOOKED_BACK_S)),
      people: crew.flatMap(({ id }) => {
        const [long, short] = [before.find(({ personId }) => personId === id), tonight.find(({ personId }) => personId === id)];
        return long || short ? [{ personId: id, nights: long?.nights ?? 0, before: long ? shareView(long) : null, tonight: short ? shareView(short) : null }] : [];
      }),
    };
  }

  /** The nights that ended before this one began. */
  private async before(moment: Moment, from: EpochS): Promise<readonly LongShare[]> {
    const since = later(from, -LOOKED_BACK_S);
    const nights = (await this.shifts.between(moment.em, moment.yardId, since, from)).filter((night) => night.until <= from && night.from >= since);
    if (nights.length === 0) return [];
    const past = await this.past(moment, later(since, -LEAD_S), from);
    return sharesTogether(nights.map((shift) => sharesOfNight({ ...past, shift })));
  }

  private async tonight(moment: Moment, shift: RunningShift, now: EpochS): Promise<readonly Share[]> {
    const plan = await this.plans.current(moment.em, moment.yardId);
    const past = await this.past(moment, later(shift.from, -LEAD_S), now);
    return sharesOfNight({ ...past, tasks: [...past.tasks, ...(await this.tasks.open(moment.em, moment.yardId, now))], shift, shown: plan?.shiftId === shift.id ? plan.assignments : [] });
  }

  private async past({ em, yardId }: Moment, from: EpochS, until: EpochS) {
    const { woodPlace, walkSpeedMPerS } = await this.yards.settings(em, yardId);
    const looks = await this.checks.recent(em, yardId, from);
    return {
      woodPlace, walkSpeedMPerS,
      pits: (await this.yards.pits(em, yardId)).map(({ id, xM, yM }) => ({ id, xM, yM })),
      looks: looks.map(({ pitId, personId, seenAt }) => ({ pitId, personId, seenAt: fromIso(seenAt) })),
      tasks: await this.tasks.doneBetween(em, yardId, from, until),
    };
  }
}

const shareView = ({ thereS, workedS, unpleasantS, walkedS }: Share): ShareView => ({ thereS, workedS, unpleasantS, walkedS });
