import { type EpochS, requireRange } from '../quantity/index.js';
import type { Span } from './pay.js';

/** Wood that was to burn, evenly over a stretch. */
export interface PlannedWood extends Span {
  readonly splits: number;
  readonly dryKg: number;
}
/** Wood that was put on at an instant. */
export interface BurnedAt {
  readonly at: EpochS;
  readonly splits: number;
  readonly dryKg: number;
}
export interface Wood {
  readonly splits: number;
  readonly dryKg: number;
}
/** One pit's wood beside what was planned of it, in all and in the gusts. */
export interface PitBesidePlan {
  readonly planned: Wood;
  readonly was: Wood;
  readonly inGusts: { readonly lengthS: number; readonly planned: Wood; readonly was: Wood };
}

const NOTHING: Wood = { splits: 0, dryKg: 0 };
const plus = (a: Wood, b: Wood): Wood => ({ splits: a.splits + b.splits, dryKg: a.dryKg + b.dryKg });
const sharedS = (a: Span, b: Span) => Math.max(0, Math.min(a.until, b.until) - Math.max(a.from, b.from));

/** What of a plan lies within a stretch. */
const plannedIn = (plan: readonly PlannedWood[], span: Span): Wood => plan.reduce((sum, load) => {
  const part = load.until > load.from ? sharedS(load, span) / (load.until - load.from) : 0;
  return plus(sum, { splits: load.splits * part, dryKg: load.dryKg * part });
}, NOTHING);
const burnedIn = (burned: readonly BurnedAt[], { from, until }: Span): Wood => burned.filter(({ at }) => at >= from && at < until).reduce(plus, NOTHING);

/**
 * One pit's wood beside its plan. What was burned before its plan begins is in neither.
 *
 * @param pit.plan   loads, in any order
 * @param pit.gusts  stretches that do not overlap
 * @param pit.until  up to when it is reckoned: a night that still runs is compared up to now
 * @returns splits and dry wood, kg. Held to pit-beside-plan.test.ts
 */
export function pitBesidePlan({ plan, burned, gusts, until }: { readonly plan: readonly PlannedWood[]; readonly burned: readonly BurnedAt[]; readonly gusts: readonly Span[]; readonly until: EpochS }): PitBesidePlan {
  const whole: Span = { from: Math.min(...plan.map(({ from }) => from), until) as EpochS, until };
  const within = gusts.map((gust): Span => ({ from: Math.max(gust.from, whole.from) as EpochS, until: Math.min(gust.until, until) as EpochS })).filter((gust) => gust.until > gust.from);
  const inGusts = <T>(of: (span: Span) => T) => within.map(of);
  return {
    planned: plannedIn(plan, whole), was: burnedIn(burned, whole),
    inGusts: {
      lengthS: within.reduce((sum, { from, until: end }) => sum + end - from, 0),
      planned: inGusts((gust) => plannedIn(plan, gust)).reduce(plus, NOTHING), was: inGusts((gust) => burnedIn(burned, gust)).reduce(plus, NOTHING),
    },
  };
}

/** With fewer splits than these, one more or less would be taken for the wind. Source: our own choice. */
const TELLING_SPLITS = 4;

/**
 * What the gusts did to the hunger of fires: what burned over what would have burned had the hours of gusts kept to their plan as well
 * as the calm hours did.
 *
 *     h = calm burned / calm planned        factor = burned / (h x planned)             Source: our own reckoning
 *
 * @param pits  those whose fires are compared, together
 * @returns 1 where the gusts were too short to tell; above 1 where they cost wood. Held to pit-beside-plan.test.ts
 */
export function gustFactor(pits: readonly PitBesidePlan[]): number {
  const sum = (of: (pit: PitBesidePlan) => Wood) => pits.map(of).reduce(plus, NOTHING);
  const [planned, was, gustsPlanned, gustsWas] = [sum((pit) => pit.planned), sum((pit) => pit.was), sum((pit) => pit.inGusts.planned), sum((pit) => pit.inGusts.was)];
  if (gustsPlanned.splits < TELLING_SPLITS || was.dryKg <= 0) return 1;
  const calm = { planned: planned.dryKg - gustsPlanned.dryKg, was: was.dryKg - gustsWas.dryKg };
  const isTelling = planned.splits - gustsPlanned.splits >= TELLING_SPLITS && calm.was > 0;
  const factor = was.dryKg / ((isTelling ? calm.was / calm.planned : 1) * planned.dryKg);
  requireRange('factor of the gusts', factor, 0, 1e6);
  return factor;
}
