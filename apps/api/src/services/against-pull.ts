import type { CostCause, ServiceCost } from '@stokehold/domain/contract';
import { type Difference, explainCrew, explainWood, type PaidPerson, wetFactor, type WoodFigures } from '@stokehold/domain/cost';
import { type Cents, cents, dryBasis, type EpochS } from '@stokehold/domain/quantity';
import { dryMassKg, netHeatJPerDryKg } from '@stokehold/domain/wood';
import type { Lot } from '../wood/index.js';

/** A pull as far as a comparison needs it: the first one of the night. */
export interface PlannedPull {
  readonly loads: readonly { readonly needJ: number; readonly from: EpochS; readonly until: EpochS; readonly wood: readonly { readonly lotId: string; readonly pieces: number }[] }[];
}
/** What a night really was. */
export interface TrueNight {
  readonly burned: readonly { readonly lotId: string; readonly pieces: number; readonly costCents: Cents }[];
  /** Sum of the hours that fires were kept so far, s. */
  readonly burnedS: number;
  /** Until when it is reckoned: while the night runs, the plan counts to here only. */
  readonly until: EpochS;
  readonly meanWindMPerS: number | undefined;
  readonly lots: readonly Lot[];
}

/** Each metre a second of wind above a light breeze makes a fire 3 % hungrier. Source: common practice, no source. */
const WIND_FRAC_PER_M_PER_S = 0.03;
const LIGHT_BREEZE_M_PER_S = 2;

const sum = <T>(all: readonly T[], of: (one: T) => number) => all.reduce((total, one) => total + of(one), 0);
type Taken = readonly { readonly lotId: string; readonly pieces: number }[];

/** The part of a plan that lies before an instant. */
const soFar = ({ loads }: PlannedPull, until: EpochS): PlannedPull => ({
  loads: loads.filter(({ from }) => from < until).map((load) => {
    const end = Math.min(load.until, until) as EpochS;
    return { ...load, until: end, needJ: (load.needJ * (end - load.from)) / (load.until - load.from) };
  }),
});

/** Mean split, price and wetness of what was taken. */
function meanOf(taken: Taken, lots: readonly Lot[]) {
  const known = taken.flatMap(({ lotId, pieces }) => {
    const lot = lots.find(({ id }) => id === lotId);
    return lot && pieces > 0 ? [{ lot, pieces }] : [];
  });
  const pieces = sum(known, (one) => one.pieces);
  const mean = (of: (lot: Lot) => number) => sum(known, ({ lot, pieces: n }) => of(lot) * n) / pieces;
  return pieces > 0 ? { pieceDryKg: mean(dryMassKg), centsPerSplit: mean((lot) => lot.priceCents / lot.boughtPieces), wetFactor: mean((lot) => wetFactor(lot.moisture)) } : undefined;
}

/**
 * The wood of a service beside the first pull of its night, and its hours beside those planned: by cause, to the cent. The service carries the
 * same part of the plan as it carries of what was really burned.
 */
export function againstPull(whole: PlannedPull, night: TrueNight, own: { readonly splits: number; readonly woodCents: Cents; readonly plannedPaid: readonly PaidPerson[]; readonly paid: readonly PaidPerson[]; readonly crewCents: Cents }): ServiceCost['against'] {
  const plan = soFar(whole, night.until);
  const wood = plan.loads.flatMap((load) => load.wood);
  const [planned, actual] = [meanOf(wood, night.lots), meanOf(night.burned, night.lots)];
  const allSplits = sum(night.burned, ({ pieces }) => pieces);
  const plannedS = sum(plan.loads, ({ from, until }) => until - from);
  if (!planned || !actual || allSplits <= 0 || plannedS <= 0 || night.burnedS <= 0) return null;
  const part = own.splits / allSplits;
  const weatherFactor = 1 + WIND_FRAC_PER_M_PER_S * Math.max(0, (night.meanWindMPerS ?? 0) - LIGHT_BREEZE_M_PER_S);
  const plannedFigures: WoodFigures = { burnedS: plannedS * part, dryKgPerS: sum(plan.loads, ({ needJ }) => needJ) / netHeatJPerDryKg(dryBasis(0.12)) / plannedS, weatherFactor: 1, ...planned };
  const dryKgPerS = (allSplits * actual.pieceDryKg) / night.burnedS / weatherFactor / actual.wetFactor;
  const { plannedCents, plannedSplits, causes } = explainWood(plannedFigures, { burnedS: night.burnedS * part, dryKgPerS, weatherFactor, ...actual }, { splits: own.splits, costCents: own.woodCents });
  const crew = crewOf(own);
  return { plannedWoodCents: plannedCents, plannedSplits, plannedCrewCents: crew.plannedCents, causes: [...causes, ...crew.causes].map((line): CostCause => ({ cause: line.cause, cents: line.cents, splits: line.splits })) };
}

function crewOf({ plannedPaid, paid, crewCents }: { readonly plannedPaid: readonly PaidPerson[]; readonly paid: readonly PaidPerson[]; readonly crewCents: Cents }): { readonly plannedCents: number; readonly causes: readonly Difference<'more-hours' | 'dearer-hours'>[] } {
  const all = sum(paid, ({ costCents }) => costCents);
  const part = all > 0 ? crewCents / all : 0;
  const plannedCents = cents(Math.round(sum(plannedPaid, ({ costCents }) => costCents) * part));
  return { plannedCents, causes: explainCrew({ paidS: sum(plannedPaid, ({ paidS }) => paidS) * part, costCents: plannedCents }, { paidS: sum(paid, ({ paidS }) => paidS) * part, costCents: crewCents }) };
}
