import { Injectable } from '@nestjs/common';
import { fromIso, later } from '@stokehold/domain/quantity';
import { LEAD_S, type RunningShift } from '@stokehold/domain/shift';
import type { NightFacts, Shown } from '@stokehold/scheduling/night';
import { Checks } from '../checks/index.js';
import { Fires } from '../pits/index.js';
import type { Deed } from '../platform/index.js';
import { Tasks } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { Fairness } from './fairness.service.js';
import { PinStore } from './pin.store.js';

/** Brings together all that the rounds of a night are planned from. */
@Injectable()
export class NightGathering {
  constructor(
    private readonly yards: Yards,
    private readonly fires: Fires,
    private readonly checks: Checks,
    private readonly tasks: Tasks,
    private readonly pins: PinStore,
    private readonly fairness: Fairness,
  ) {}

  async facts({ em, yardId, now }: Pick<Deed, 'em' | 'yardId' | 'now'>, shift: RunningShift, shown: readonly Shown[]): Promise<NightFacts> {
    const since = later(shift.from, -LEAD_S);
    const [yard, pits, looks, fires, tasks, carried, pins] = await Promise.all([
      this.yards.settings(em, yardId), this.yards.pits(em, yardId), this.checks.recent(em, yardId, since), this.fires.dues(em, yardId),
      this.tasks.ofNight(em, yardId, now, since), this.fairness.carried({ em, yardId }, shift), this.pins.of(em, shift.id),
    ]);
    return {
      now, shift, shown,
      woodPlace: yard.woodPlace,
      walkSpeedMPerS: yard.walkSpeedMPerS,
      pits: pits.map(({ id, xM, yM }) => ({ id, xM, yM })),
      fires,
      looks: looks.map(({ pitId, personId, seenAt }) => ({ pitId, personId, seenAt: fromIso(seenAt) })),
      tasks,
      carried,
      pins,
    };
  }
}
