import type { AdviceAction } from './actions.js';
import type { Band, BedGrade } from './pit.js';

/** What a person with a pencil knows: bed, what is left of all splits in standard splits, and the gauges' middle. */
export interface PencilSeen {
  readonly bed?: BedGrade | undefined;
  readonly splitLifeSum: number;
  readonly chamberTempC?: number | undefined;
  readonly band: Band;
}

const middleC = (band: Band) => 0.5 * (band.lowC + band.highC);

/** Standard splits that a fire wants at a look: 0.65 + 0.2 (1 - life) + 0.015 per °F below the middle of the band. Source: our fit, tests/bench/fire-skill.mjs. */
export const needInSplits = (splitLifeSum: number, belowMiddleK: number) => 0.65 + 0.2 * (1 - splitLifeSum) + 0.015 * 1.8 * belowMiddleK;

/** A pit colder than this below its band is being brought up: what burns there already warms it, more wood only overshoots, K: 50 °F. Source: our fit. */
const MOST_LACK_K = 28;

/**
 * Wood in proportion to what lacks, in standard splits: want = 0.65 + 0.2 (1 - life) + 0.015 per °F below the middle of
 * the band; nothing under 0.4, a thin one under 0.85, one under 1.15, a thick one under 1.55, else two. Without a
 * temperature the bed decides. A low bed never gets less than one. Source: our fit, tests/bench/fire-skill.mjs.
 */
export function pencilRule(seen: PencilSeen): AdviceAction {
  const lacksK = seen.chamberTempC === undefined ? lackByBedK(seen.bed) : Math.min(MOST_LACK_K, middleC(seen.band) - seen.chamberTempC);
  const want = needInSplits(seen.splitLifeSum, lacksK);
  const action = want < LEAST_WANT ? 'rake' : want < 0.85 ? 'one-thin' : want < 1.15 ? 'one' : want < 1.55 ? 'one-thick' : 'two';
  return seen.bed === 'low' && (action === 'rake' || action === 'one-thin') ? 'one' : action;
}

/** Less wanted than this is not laid. */
const LEAST_WANT = 0.4;

/** What a bed says of the temperature when nobody read one, K. Source: our fit. */
const lackByBedK = (bed: BedGrade | undefined) => (bed === 'low' ? 14 : bed === 'full' ? -4 : 0);

/** By the book: two on a low bed, one else. Source: common practice, no source; for the bench. */
export const ruleA = (seen: { readonly bed: BedGrade }): AdviceAction => (seen.bed === 'low' ? 'two' : 'one');

/** With sense: none when hot or most is left, two when low or 7 °F below the band. Source: our fit; for the bench. */
export function ruleB(seen: { readonly bed: BedGrade; readonly splitLifeSum: number; readonly chamberTempC: number; readonly band: Band }): AdviceAction {
  if (seen.bed === 'low' || seen.chamberTempC < seen.band.lowC - 7 / 1.8) return 'two';
  return seen.chamberTempC > seen.band.highC || seen.splitLifeSum > 0.7 ? 'rake' : 'one';
}
