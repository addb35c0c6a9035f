import { type Cents, cents, type DryBasis, dryBasis, requireRange } from '../quantity/index.js';
import { netHeatJPerDryKg } from '../wood/index.js';

/** What made a fire's wood cost what it cost, planned or as it was. */
export interface WoodFigures {
  /** Time the fire was kept, s. */
  readonly burnedS: number;
  /** Dry wood a second on a calm night with dry wood, kg/s. */
  readonly dryKgPerS: number;
  /** Wind, rain and cold: the fire's hunger over that of a calm night; 1 is calm. */
  readonly weatherFactor: number;
  /** Wet wood: dry wood that is needed over that of good wood; 1 is dry. */
  readonly wetFactor: number;
  /** Dry wood in one split of what was burned, kg. */
  readonly pieceDryKg: number;
  readonly centsPerSplit: number;
}
export type WoodCause = 'longer-cook' | 'hungrier-pit' | 'wind' | 'wet-lot' | 'smaller-splits' | 'dearer-wood' | 'not-explained';
/** One cause's part of the difference; negative where it saved. */
export interface Difference<Cause extends string> {
  readonly cause: Cause;
  readonly cents: Cents;
  /** Splits that it made more or fewer. */
  readonly splits: number;
}

const ORDER: readonly (readonly [Exclude<WoodCause, 'not-explained'>, keyof WoodFigures])[] = [
  ['longer-cook', 'burnedS'], ['hungrier-pit', 'dryKgPerS'], ['wind', 'weatherFactor'], ['wet-lot', 'wetFactor'], ['smaller-splits', 'pieceDryKg'], ['dearer-wood', 'centsPerSplit'],
];

/** Splits that figures come to: time x rate x weather x wet / split. */
export const splitsOf = (figures: WoodFigures): number => (figures.burnedS * figures.dryKgPerS * figures.weatherFactor * figures.wetFactor) / figures.pieceDryKg;

/**
 * Plan against actual of a fire's wood, by cause: the planned figures are put aside for the true ones one after the other, and each
 * cause gets what its own change made. What the figures do not explain is a line of its own. The lines add up to the difference to
 * the cent. Source: chain substitution of cost accounting, from memory.
 *
 * @param plan      planned figures, all above 0
 * @param actual    true figures, all above 0
 * @param burned    splits and cents as they really were
 * @returns one line per cause that is not nothing, in the order time, pit, wind, wet, size, price, rest. Held to libs/domain/cost/against-plan.test.ts
 */
export function explainWood(plan: WoodFigures, actual: WoodFigures, burned: { readonly splits: number; readonly costCents: Cents }): { readonly plannedCents: Cents; readonly plannedSplits: number; readonly causes: readonly Difference<WoodCause>[] } {
  for (const [, name] of ORDER) {
    requireRange(`planned ${name}`, plan[name], 0, 1e9);
    requireRange(`true ${name}`, actual[name], 0, 1e9);
  }
  let figures = plan;
  const worth = (of: WoodFigures) => Math.round(splitsOf(of) * of.centsPerSplit);
  const causes: Difference<WoodCause>[] = [];
  for (const [cause, name] of ORDER) {
    const next = { ...figures, [name]: actual[name] };
    causes.push({ cause, cents: cents(worth(next) - worth(figures)), splits: splitsOf(next) - splitsOf(figures) });
    figures = next;
  }
  causes.push({ cause: 'not-explained', cents: cents(burned.costCents - worth(figures)), splits: burned.splits - splitsOf(figures) });
  return { plannedCents: cents(worth(plan)), plannedSplits: splitsOf(plan), causes: causes.filter((line) => line.cents !== 0 || Math.abs(line.splits) >= 0.05) };
}

export type CrewCause = 'more-hours' | 'dearer-hours';

/**
 * Plan against actual of the crew's time: first the hours at the planned rate, then the rate. The lines add up to the cent.
 *
 * @param plan    paid time 0 or more, and what it was to cost
 * @param actual  the same as it was
 */
export function explainCrew(plan: { readonly paidS: number; readonly costCents: Cents }, actual: { readonly paidS: number; readonly costCents: Cents }): readonly Difference<CrewCause>[] {
  requireRange('planned time (s)', plan.paidS, 0, 1e9);
  requireRange('true time (s)', actual.paidS, 0, 1e9);
  const atPlannedRate = plan.paidS > 0 ? Math.round((plan.costCents * actual.paidS) / plan.paidS) : plan.costCents;
  const lines = [{ cause: 'more-hours', cents: cents(atPlannedRate - plan.costCents), splits: 0 }, { cause: 'dearer-hours', cents: cents(actual.costCents - atPlannedRate), splits: 0 }] as const;
  return lines.filter((line) => line.cents !== 0);
}

/**
 * Dry wood that a fire needs over that of wood at 12 %, for the same heat: q(0.12) / q(x). [ISO-18125]
 *
 * @param moisture  x, dry basis, 0 to 1.4
 */
export const wetFactor = (moisture: DryBasis): number => netHeatJPerDryKg(dryBasis(0.12)) / netHeatJPerDryKg(moisture);
