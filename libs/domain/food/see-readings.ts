import { clamp, type EpochS } from '../quantity/index.js';
import type { FoodCook, ReadingVerdict } from './cook.js';
import { correct, expectedC, momentsOf } from './correct.js';
import { airAt, type Roll, rollMember, startRoll, stepAt, workSurface } from './roll.js';
import { type Bunch, bunched, type Expectation, hottestAirC, judgeReading } from './judge.js';
import { type KeptRoll, keptRoll, laidAside } from './kept-roll.js';

/** Readings nearer than this to each other stand together, s; finer for thin pieces. Source: our choice. */
const BUNCH_S = 900;
/** A probe in meat, and what the model leaves out between two readings, K. Source: our choice. */
const READING_SD_K = 1.5;
/** The same when it was put back elsewhere. Source: our choice. */
const MOVED_SD_K = 6;

/** How far the members have come through the readings, and what was made of those. */
interface Way {
  readonly step: number;
  /** A verdict for each bunch seen. */
  readonly verdicts: readonly ReadingVerdict[];
  readonly turnedDown: Expectation['turnedDown'];
  readonly last: Expectation['last'];
}
/** Members laid aside on their way, to be taken up by the next look. Plain data. */
export interface Carried {
  readonly roll: KeptRoll;
  readonly way: Way;
  /** What each bunch seen was judged by. */
  readonly judgedBy: readonly (readonly number[])[];
}
/** All members past every reading up to `now`, each reading judged and used; `step` is how far they have come. */
export interface Seen {
  readonly roll: Roll;
  readonly step: number;
  /** In the order of the cook's readings. */
  readonly verdicts: readonly ReadingVerdict[];
  /** For the next look; absent while there is nothing worth carrying. */
  readonly carried?: Carried;
}

/** A bunch with the air it was read in. */
interface Read extends Bunch {
  readonly airC: number;
  readonly hottestAirC: number;
}

/** All that a bunch's verdict and correction follow from, beside the members. */
const judgedBy = ({ reading, airC, hottestAirC: hottest }: Read) => [reading.at, reading.tempC, airC, hottest];
const alike = (one: readonly number[], other: readonly number[]) => one.every((value, i) => value === other[i]);

/** One bunch: the members come to it, judge it and are corrected by it. */
function seeBunch(roll: Roll, { step, verdicts, turnedDown, last }: Way, { reading, airC, hottestAirC: hottest }: Read): Way {
  const surface = workSurface();
  const to = Math.max(step, stepAt(roll, reading.at - roll.cook.onAt));
  for (let m = 0; m < roll.bodies.members && to > step; m++) rollMember(roll, m, step, to, 'seen', surface);
  const { mean, variance } = momentsOf(expectedC(roll));
  const verdict = judgeReading(reading, { meanC: mean, sdK: Math.sqrt(variance), airC, hottestAirC: hottest, turnedDown, ...(last && { last }) });
  const way = { step: to, verdicts: [...verdicts, verdict] };
  if (verdict !== 'used' && verdict !== 'probe-moved') return { ...way, turnedDown: [...turnedDown, { tempC: reading.tempC, meanC: mean, verdict }], last };
  correct(roll, to, reading.tempC, verdict === 'used' ? READING_SD_K : MOVED_SD_K);
  return { ...way, turnedDown: [], last: { at: reading.at, tempC: reading.tempC, meanC: momentsOf(expectedC(roll)).mean } };
}

/**
 * Takes all members through the readings. What was carried from an earlier look is taken up where everything before it is the same
 * to the last bit (the cook, the air of every step, each reading with its air); else they start anew. Either way the numbers are the
 * same. What is laid aside stands before the last bunch, which later readings may still change. Source: roll.ts, judge.ts, correct.ts.
 */
export function seeReadings(cook: FoodCook, now: EpochS, carried?: Carried): Seen {
  const roll = startRoll(cook);
  const bunches = bunched(cook, now, clamp(8 * roll.endS[1]!, 60, BUNCH_S))
    .map((bunch): Read => ({ ...bunch, airC: airAt(cook.air, bunch.reading.at), hottestAirC: hottestAirC(cook, bunch.reading.at) }));
  const by = bunches.map(judgedBy);
  const goesOn = carried !== undefined && carried.judgedBy.length < by.length && carried.judgedBy.every((one, nth) => alike(one, by[nth]!)) && keptRoll(roll, carried.roll);
  let way: Way = goesOn ? carried.way : { step: 0, verdicts: [], turnedDown: [], last: undefined };
  let aside: Carried | undefined;
  for (let nth = way.verdicts.length; nth < bunches.length; nth++) {
    if (nth > 0 && nth === bunches.length - 1) aside = { roll: laidAside(roll, way.step), way, judgedBy: by.slice(0, nth) };
    way = seeBunch(roll, way, bunches[nth]!);
  }
  const verdicts: ReadingVerdict[] = (cook.readings ?? []).map(() => 'before-on');
  bunches.forEach(({ places }, nth) => places.forEach((place) => { verdicts[place] = way.verdicts[nth]!; }));
  return { roll, step: way.step, verdicts, ...(aside && { carried: aside }) };
}
