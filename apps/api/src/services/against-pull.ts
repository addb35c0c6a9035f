import type { CostCause, ServiceCost } from '@stokehold/domain/contract';
import { type BurnedWood, type Difference, explainCrew, explainWood, gustFactor, type PaidPerson, type PitBesidePlan, pitBesidePlan, wetFactor, type WoodFigures } from '@stokehold/domain/cost';
import type { GustStretch } from '@stokehold/domain/chamber';
import { type Cents, cents, dryBasis, type EpochS, type PitId } from '@stokehold/domain/quantity';
import { dryMassKg, netHeatJPerDryKg } from '@stokehold/domain/wood';
import type { Lot } from '../wood/index.js';

/** A pull as far as a comparison needs it: the first one of the night. */
export interface PlannedPull {
  readonly loads: readonly { readonly pitId: PitId; readonly needJ: number; readonly from: EpochS; readonly until: EpochS; readonly wood: readonly { readonly lotId: string; readonly pieces: number }[] }[];
}
/** A pit that a service cooked on, and the gusts on it. */
export interface PitOfNight {
  readonly id: PitId;
  readonly name: string;
  readonly gusts: readonly GustStretch[];
}
/** What the fires of some pits really were. */
export interface TrueNight {
  readonly pits: readonly PitOfNight[];
  readonly burned: readonly BurnedWood[];
  /** Sum of the hours that these fires were kept so far, s. */
  readonly burnedS: number;
  /** Until when it is reckoned: while the night runs, the plan counts to here only. */
  readonly until: EpochS;
  readonly lots: readonly Lot[];
}

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

const GOOD_WOOD_J_PER_KG = netHeatJPerDryKg(dryBasis(0.12));

/** A pit beside its loads of the plan; undefined where none was planned for it. */
function pitBeside({ id, gusts }: PitOfNight, { loads }: PlannedPull, { burned, until, lots }: TrueNight, usualDryKg: number): PitBesidePlan | undefined {
  const plan = loads.filter(({ pitId }) => pitId === id).map(({ needJ, wood, ...load }) => {
    const dryKg = needJ / GOOD_WOOD_J_PER_KG;
    return { ...load, dryKg, splits: dryKg / (meanOf(wood, lots)?.pieceDryKg ?? usualDryKg) };
  });
  const own = burned.filter(({ pitId }) => pitId === id).map(({ at, lotId, pieces }) => {
    const lot = lots.find((one) => one.id === lotId);
    return { at, splits: pieces, dryKg: pieces * (lot ? dryMassKg(lot) : usualDryKg) };
  });
  return plan.length > 0 ? pitBesidePlan({ plan, burned: own, gusts, until }) : undefined;
}

/** Onto what most of a pit's gusts blew. */
function mostlyOnto(gusts: readonly GustStretch[]): GustStretch['onto'] {
  const lengthOf = (end: GustStretch['onto']) => sum(gusts.filter(({ onto }) => onto === end), ({ from, until }) => until - from);
  return (['firebox', 'stack', 'side'] as const).reduce((most, end) => (lengthOf(end) > lengthOf(most) ? end : most));
}
const pitLine = ({ name, gusts }: PitOfNight, { planned, was, inGusts }: PitBesidePlan): NonNullable<ServiceCost['against']>['pits'][number] => ({
  pit: name, plannedSplits: planned.splits, splits: was.splits,
  gusts: inGusts.lengthS > 0 ? { lengthS: inGusts.lengthS, onto: mostlyOnto(gusts), plannedSplits: inGusts.planned.splits, splits: inGusts.was.splits } : null,
});

/**
 * The wood of a service beside the first pull of its night, and its hours beside those planned: by cause, to the cent, and pit by pit. Plan
 * and night are those of the pits it cooked on; it carries the same part of their plan as it carries of what was really burned there.
 */
export function againstPull(whole: PlannedPull, night: TrueNight, own: { readonly splits: number; readonly woodCents: Cents; readonly plannedPaid: readonly PaidPerson[]; readonly paid: readonly PaidPerson[]; readonly crewCents: Cents }): ServiceCost['against'] {
  const ofPits = { loads: whole.loads.filter(({ pitId }) => night.pits.some(({ id }) => id === pitId)) };
  const plan = soFar(ofPits, night.until);
  const wood = plan.loads.flatMap((load) => load.wood);
  const [planned, actual] = [meanOf(wood, night.lots), meanOf(night.burned, night.lots)];
  const allSplits = sum(night.burned, ({ pieces }) => pieces);
  const plannedS = sum(plan.loads, ({ from, until }) => until - from);
  if (!planned || !actual || allSplits <= 0 || plannedS <= 0 || night.burnedS <= 0) return null;
  const part = own.splits / allSplits;
  const beside = night.pits.flatMap((pit) => {
    const one = pitBeside(pit, ofPits, night, planned.pieceDryKg);
    return one ? [{ pit, beside: one }] : [];
  });
  const weatherFactor = gustFactor(beside.map((one) => one.beside));
  const plannedFigures: WoodFigures = { burnedS: plannedS * part, dryKgPerS: sum(plan.loads, ({ needJ }) => needJ) / GOOD_WOOD_J_PER_KG / plannedS, weatherFactor: 1, ...planned };
  const dryKgPerS = (allSplits * actual.pieceDryKg) / night.burnedS / weatherFactor / actual.wetFactor;
  const { plannedCents, plannedSplits, causes } = explainWood(plannedFigures, { burnedS: night.burnedS * part, dryKgPerS, weatherFactor, ...actual }, { splits: own.splits, costCents: own.woodCents });
  const crew = crewOf(own);
  return {
    plannedWoodCents: plannedCents, plannedSplits, plannedCrewCents: crew.plannedCents, causes: [...causes, ...crew.causes].map((line): CostCause => ({ cause: line.cause, cents: line.cents, splits: line.splits })),
    pits: beside.map((one) => pitLine(one.pit, one.beside)),
  };
}

function crewOf({ plannedPaid, paid, crewCents }: { readonly plannedPaid: readonly PaidPerson[]; readonly paid: readonly PaidPerson[]; readonly crewCents: Cents }): { readonly plannedCents: number; readonly causes: readonly Difference<'more-hours' | 'dearer-hours'>[] } {
  const all = sum(paid, ({ costCents }) => costCents);
  const part = all > 0 ? crewCents / all : 0;
  const plannedCents = cents(Math.round(sum(plannedPaid, ({ costCents }) => costCents) * part));
  return { plannedCents, causes: explainCrew({ paidS: sum(plannedPaid, ({ paidS }) => paidS) * part, costCents: plannedCents }, { paidS: sum(paid, ({ paidS }) => paidS) * part, costCents: crewCents }) };
}
