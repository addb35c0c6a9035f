import type { EndTemps } from '@stokehold/domain/chamber';
import { type CarriedFire, dueMoved, type FireToCarry, heldDue, USUAL_AIR_SET } from '@stokehold/domain/fire';
import { type EpochS, fromIso, MINUTE_S } from '@stokehold/domain/quantity';
import type { Errand } from './errand.js';
import { adviceViewOf, dueFromView, dueViewOf, fireViewOf } from './fire-view.js';
import type { UnusedReading } from './fire-estimate.row.js';
import type { KeptFire, KeptLook, KeptTold, PastTemp } from './pits.store.js';

/** What is kept of a fire that was carried, and whether its due time moved far enough to tell. */
export interface Outcome {
  readonly fire: KeptFire;
  readonly look?: KeptLook;
  readonly told?: KeptTold;
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
    estimate: fireViewOf(carried.estimate, { air: look?.air ?? kept?.estimate.air ?? USUAL_AIR_SET, troubles: carried.troubles ?? [], fan }),
    due: due ? dueViewOf(due) : (kept?.due ?? null),
    advice: carried.advice ? adviceViewOf(carried.advice) : (kept?.advice ?? null),
  };
  return {
    fire,
    ...(carried.looked && { look: { pitId: pit.id, checkId: look?.checkId ?? null, lookedAt: look?.at ?? begin.at, belief: carried.looked } }),
    ...toldOf(errand, carried, fire),
    past: pastOf(errand, asked, carried, now),
    moved: due !== undefined && dueMoved(before, due),
  };
}

/** What a check was told, to be held against what comes; nothing where nobody looked. */
function toldOf({ pit, kept, look }: Errand, { learned, outlook }: CarriedFire, fire: KeptFire): { readonly told?: KeptTold } {
  if (!look || !learned || !outlook) return {};
  const { loss, burn, coal } = learned;
  const advised = kept?.advice && fromIso(kept.advice.madeAt) <= look.at ? kept.advice.action : null;
  return { told: { pitId: pit.id, checkId: look.checkId, lookedAt: look.at, advised, fan: fire.estimate.forecast, learned: { loss, burn, coal } } };
}

/** Readings not older than this say how the pit stands now. */
const JUST_READ_S = 2 * MINUTE_S;
const meanOf = ({ fireEndTempC, stackEndTempC }: EndTemps) =>
  fireEndTempC !== undefined && stackEndTempC !== undefined ? (fireEndTempC + stackEndTempC) / 2 : undefined;

/** How the pit stood at the look, when both ends were read by hand, and how it stands now. */
function pastOf({ pit, look }: Errand, { readings }: FireToCarry, { estimate, rejected }: CarriedFire, now: EpochS): PastTemp[] {
  const bedKg = estimate.glowingBedKg;
  const zoneShiftK = estimate.zoneTempC.map((tempC) => Math.round((tempC - estimate.chamberTempC.p50) * 100) / 100);
  const unused = unusedOf(readings, rejected);
  const byHandC = look && meanOf(look);
  const atLook = look && byHandC !== undefined ? [{ pitId: pit.id, at: look.at, tempC: byHandC, measured: true, bedKg, zoneShiftK, unused }] : [];
  if (look?.at === now && atLook.length > 0) return atLook;
  const last = rejected.length === 0 ? readings.at(-1) : undefined;
  const readC = last && now - last.until < JUST_READ_S ? meanOf(last) : undefined;
  return [...atLook, { pitId: pit.id, at: now, tempC: readC ?? estimate.chamberTempC.p50, measured: readC !== undefined, bedKg, zoneShiftK, unused }];
}

/** What a thermometer in a pit can show at all, °C; the estimator believes nothing beyond it. */
const LEAST_C = -60;
const MOST_C = 400;

/** Which ends were read and not believed, and why: shown beside the fire, never thrown away. */
function unusedOf(readings: FireToCarry['readings'], rejected: CarriedFire['rejected']): readonly UnusedReading[] | null {
  if (rejected.length === 0) return null;
  return rejected.map((end): UnusedReading => {
    const shown = readings.map(({ fireEndTempC, stackEndTempC }) => (end === 'fire-end' ? fireEndTempC : stackEndTempC));
    const canBe = shown.every((tempC) => tempC === undefined || (tempC >= LEAST_C && tempC <= MOST_C));
    return { end, why: canBe ? 'far-off' : 'cannot-be', tempC: shown.filter((tempC) => tempC !== undefined).at(-1) ?? null };
  });
}
