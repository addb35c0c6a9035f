import { type EpochS } from '../quantity/index.js';
import type { CoreReading, FoodCook, ReadingVerdict } from './cook.js';
import { airAt } from './roll.js';

/** What is expected of the probe now. */
export interface Expectation {
  readonly meanC: number;
  readonly sdK: number;
  readonly airC: number;
  /** Hottest air since the food went on. */
  readonly hottestAirC: number;
  /** The last reading that was used, with what was expected then. */
  readonly last?: { readonly at: EpochS; readonly tempC: number; readonly meanC: number };
  /** Readings turned down in a row just before, with what was expected at each: a probe put back elsewhere reads steadily there. */
  readonly turnedDown: readonly { readonly tempC: number; readonly meanC: number; readonly verdict: ReadingVerdict }[];
}

/** Meat is never hotter than the hottest air it has been in; probes and gauges may differ by this, K. Source: our choice. */
const AIR_MARGIN_K = 6;
/** Beside the air's own temperature by less than this is the air's, K. Source: our choice. */
const LIKE_AIR_K = 10;
/** A step away from the expected course larger than this is no heating, K, and it grows with the time since the last reading, K/h. Source: our choice. */
const JUMP_K = 7;
const JUMP_K_PER_H = 4;
/** Readings in a row that agree about a new course before it is believed. Source: our choice. */
const AGREE = 2;

/**
 * Whether a reading can be meat. Pulled out it reads the pit's air, or the air outside; put back elsewhere it jumps and then runs
 * on beside the old course: after three that agree it is believed again. Source: our choice, held to done-time.test.ts
 */
export function judgeReading(reading: CoreReading, seen: Expectation): ReadingVerdict {
  const { tempC } = reading;
  if (tempC > seen.hottestAirC + AIR_MARGIN_K) return 'hotter-than-its-air';
  const off = tempC - seen.meanC;
  const wide = 4 * Math.sqrt(seen.sdK ** 2 + 1);
  if (off > Math.max(15, wide) && Math.abs(tempC - seen.airC) < LIKE_AIR_K) return 'reads-pit-air';
  const hours = seen.last ? (reading.at - seen.last.at) / 3600 : 0;
  const step = seen.last ? off - (seen.last.tempC - seen.last.meanC) : off;
  const most = seen.last ? JUMP_K + JUMP_K_PER_H * hours : Math.max(12, wide);
  if (Math.abs(step) <= Math.max(most, seen.last ? 0 : wide)) return 'used';
  const before = seen.turnedDown.slice(-AGREE);
  const agree = before.length === AGREE && before.every((one) => one.verdict !== 'reads-pit-air' && Math.abs(tempC - seen.meanC - (one.tempC - one.meanC)) < JUMP_K);
  if (tempC < 45 && step < -12) return agree && tempC > 40 ? 'probe-moved' : 'reads-outside-air';
  return agree ? 'probe-moved' : 'jumped';
}

/** A stretch of readings taken as one. */
export interface Bunch {
  readonly reading: CoreReading;
  /** Places in the cook's own list. */
  readonly places: readonly number[];
}

/** Readings of one stretch stand together by the middle one, so that a probe every few seconds counts no more than it knows. Source: our choice. */
export function bunched(cook: FoodCook, now: EpochS, everyS: number): readonly Bunch[] {
  const within = (cook.readings ?? []).map((reading, place) => ({ reading, place })).filter(({ reading }) => reading.at >= cook.onAt && reading.at <= now && Number.isFinite(reading.tempC));
  const groups = new Map<number, { reading: CoreReading; place: number }[]>();
  for (const one of within.sort((a, b) => a.reading.at - b.reading.at || a.place - b.place)) {
    const group = Math.floor((one.reading.at - cook.onAt) / everyS);
    const members = groups.get(group);
    if (members) members.push(one);
    else groups.set(group, [one]);
  }
  return [...groups.values()].map((group) => {
    const byTemp = [...group].sort((a, b) => a.reading.tempC - b.reading.tempC);
    return { reading: byTemp[Math.floor((byTemp.length - 1) / 2)]!.reading, places: group.map(({ place }) => place) };
  });
}

/** Hottest air from going on until an instant, °C. Source: none needed. */
export function hottestAirC(cook: FoodCook, until: number): number {
  let hottest = Math.max(airAt(cook.air, cook.onAt), airAt(cook.air, until));
  for (let i = 0; i < cook.air.tempC.length; i++) {
    const at = cook.air.from + i * cook.air.stepS;
    if (at >= cook.onAt && at <= until) hottest = Math.max(hottest, cook.air.tempC[i]!);
  }
  return hottest;
}
