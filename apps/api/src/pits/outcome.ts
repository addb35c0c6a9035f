import type { EndTemps } from '@stokehold/domain/chamber';
import { type CarriedFire, dueMoved, type FireToCarry, heldDue } from '@stokehold/domain/fire';
import { type EpochS, MINUTE_S } from '@stokehold/domain/quantity';
import type { Errand } from './errand.js';
import { adviceViewOf, dueFromView, dueViewOf, fireViewOf } from './fire-view.js';
import type { KeptFire, KeptLook, PastTemp } from './pits.store.js';

/** What is kept of a fire that was carried, and whether its due time moved far enough to tell. */
export interface Outcome {
  readonly fire: KeptFire;
  readonly look?: KeptLook;
  readonly past: readonly PastTemp[];
  readonly moved: boolean;
}

export function outcomeOf(errand: Errand, asked: FireToCarry, carried: CarriedFire, now: EpochS): Outcome {
  const { pit, kept, begin, look } = errand;
  const before = kept?.due ? dueFromView(kept.due) : undefined;
  const fresh = carried.outlook?.due;
  const due = fresh && (errand.anew ? fresh : heldDue(before, fresh, now));
  const fan = carried.outlook?.forecast ?? kept?.estimate.forecast;
  if (!fan) throw new Error(`The fire of ${pit.name} was carried without ever being forecast.`);
  const fire = {
    pitId: pit.id,
    belief: carried.belief,
    believedAt: now,
    estimate: fireViewOf(carried.estimate, fan),
    due: due ? dueViewOf(due) : (kept?.due ?? null),
    advice: carried.advice ? adviceViewOf(carried.advice) : (kept?.advice ?? null),
  };
  return {
    fire,
    ...(carried.looked && { look: { pitId: pit.id, checkId: look?.checkId ?? null, lookedAt: look?.at ?? begin.at, belief: carried.looked } }),
    past: pastOf(errand, asked, carried, now),
    moved: due !== undefined && dueMoved(before, due),
  };
}

/** Readings not older than this say how the pit stands now. */
const JUST_READ_S = 2 * MINUTE_S;
const meanOf = ({ fireEndTempC, stackEndTempC }: EndTemps) =>
  fireEndTempC !== undefined && stackEndTempC !== undefined ? (fireEndTempC + stackEndTempC) / 2 : undefined;

/** How the pit stood at the look, when both ends were read by hand, and how it stands now. */
function pastOf({ pit, look }: Errand, { readings }: FireToCarry, { estimate, rejected }: CarriedFire, now: EpochS): PastTemp[] {
  const bedKg = estimate.glowingBedKg;
  const byHandC = look && meanOf(look);
  const atLook = look && byHandC !== undefined ? [{ pitId: pit.id, at: look.at, tempC: byHandC, measured: true, bedKg }] : [];
  if (look?.at === now && atLook.length > 0) return atLook;
  const last = rejected.length === 0 ? readings.at(-1) : undefined;
  const readC = last && now - last.until < JUST_READ_S ? meanOf(last) : undefined;
  return [...atLook, { pitId: pit.id, at: now, tempC: readC ?? estimate.chamberTempC.p50, measured: readC !== undefined, bedKg }];
}
