import type { EpochS } from '../quantity/index.js';
import type { ProbeEnd } from './see.js';

/**
 * What may be wrong at a fire, most urgent first. Each is a machine word with the numbers behind it; whoever shows it writes the
 * sentence and the caution.
 */
const TROUBLE_CODES = [
  'running-away', 'bed-nearly-out', 'out', 'diverged', 'nothing-known', 'probe-lost', 'ends-disagree', 'wood-not-recorded',
  'wet-lot', 'ash', 'wind-burst', 'not-lit',
] as const;
export type FireTroubleCode = (typeof TROUBLE_CODES)[number];

export type FireTrouble =
  /** A gauge climbs as no fed fire does: grease may burn. Comes from `runningAway`, which reads probes before any belief. */
  | { readonly code: 'running-away'; readonly end: ProbeEnd; readonly riseKPerMin: number }
  /** Share of what is believed possible in which hardly any coals are left. */
  | { readonly code: 'bed-nearly-out'; readonly nearlyOutFrac: number }
  | { readonly code: 'out' }
  /** Both probes showed what could not be for ten minutes: the belief began again from them. */
  | { readonly code: 'diverged'; readonly at: EpochS }
  /** Neither probe nor person told anything since; a hand reading helps. */
  | { readonly code: 'nothing-known'; readonly since: EpochS }
  | { readonly code: 'probe-lost'; readonly end: ProbeEnd; readonly since: EpochS }
  /** The ends differ by more than a fire can make them, for long: one probe drifts; ask for a hand reading. */
  | { readonly code: 'ends-disagree'; readonly apartK: number; readonly since: EpochS }
  /** More is left than can be: was wood laid on and not recorded? */
  | { readonly code: 'wood-not-recorded'; readonly at: EpochS }
  /** Splits burn slower than their moisture says; burnFactor is the learned multiplier. Ask for a meter reading, or whether it smoulders. */
  | { readonly code: 'wet-lot'; readonly burnFactor: number }
  /** Ash under the bed, kg, and how much of the coals' burning it leaves: clear it. */
  | { readonly code: 'ash'; readonly ashKg: number; readonly burnsFrac: number }
  /** Wind that changes the air so much that forecasts are loose: look sooner. */
  | { readonly code: 'wind-burst'; readonly onto: 'firebox' | 'stack'; readonly airFactor: number }
  /** Lit and not yet a fire to cook on: no band, no advice before the first grade. */
  | { readonly code: 'not-lit' };

/** Most urgent first. */
export const byUrgency = (troubles: readonly FireTrouble[]): readonly FireTrouble[] =>
  [...troubles].sort((a, b) => TROUBLE_CODES.indexOf(a.code) - TROUBLE_CODES.indexOf(b.code));
