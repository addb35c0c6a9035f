import { type EpochS, HOUR_S, later, type PitId } from '../quantity/index.js';
import type { WindTold } from './believed-wind.js';
import { windFromFireEndRad } from './wind-angle.js';

/** An hour of a forecast, at the height of the pits. */
export interface WindAhead {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly gustMPerS: number;
  /** Where it comes from; undefined in a calm. */
  readonly fromDeg: number | undefined;
}
export interface GustOnPit {
  readonly pitId: PitId;
  readonly at: EpochS;
  readonly onto: 'firebox' | 'stack';
  readonly gustMPerS: number;
}

/** Gusts of 15 mph press with 27 Pa, seven times the draft of a stack of 1.2 m. Source: our own choice. */
export const STRONG_GUST_M_PER_S = 15 * 0.44704;
/** What somebody saw of the wind holds for so long, and before a forecast: that is for the whole county. Source: our own choice. */
export const SEEN_WIND_HOLDS_S = 2 * HOUR_S;
/** Wind within so much of an end blows onto it. Source: our own choice; at 60 degrees the pressure on a wall is a fifth. */
const ONTO_RAD = Math.PI / 3;

/** What of a pit gusts blow onto. */
export type GustEnd = 'firebox' | 'stack' | 'side';
function endOnto(wind: { readonly fromDeg: number; readonly fireEndDeg: number }): GustEnd {
  const angle = windFromFireEndRad(wind);
  if (angle <= ONTO_RAD) return 'firebox';
  return angle >= Math.PI - ONTO_RAD ? 'stack' : 'side';
}

/**
 * Pits onto whose firebox or stack end strong gusts are forecast, with the first such hour; none where such gusts blow already and
 * everybody knows. Held to gusts.test.ts
 *
 * @param asked.seenGustMPerS  as somebody saw them last, at the height of the pits
 */
export function gustsAhead(asked: {
  readonly now: EpochS;
  readonly withinS: number;
  readonly hours: readonly WindAhead[];
  readonly seenGustMPerS: number;
  readonly pits: readonly { readonly id: PitId; readonly fireEndHeadingDeg: number }[];
}): GustOnPit[] {
  if (asked.seenGustMPerS >= STRONG_GUST_M_PER_S) return [];
  const strong = asked.hours.filter(({ from, until, gustMPerS }) => until > asked.now && from <= asked.now + asked.withinS && gustMPerS >= STRONG_GUST_M_PER_S);
  return asked.pits.flatMap(({ id, fireEndHeadingDeg }) => {
    const onto = strong.flatMap(({ from, gustMPerS, fromDeg }): GustOnPit[] => {
      if (fromDeg === undefined) return [];
      const onto = endOnto({ fromDeg, fireEndDeg: fireEndHeadingDeg });
      return onto === 'side' ? [] : [{ pitId: id, at: from, onto, gustMPerS }];
    });
    return onto.slice(0, 1);
  });
}

/** A stretch of strong gusts as it was seen. */
export interface GustStretch {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly onto: GustEnd;
}

/**
 * The stretches of a night in which strong gusts blew, and onto what of a pit: what was told holds until something else is told, and two
 * hours at most. Held to gusts.test.ts
 *
 * @param told  oldest first, from two hours before the stretch that is asked for
 * @returns in order of time, each within what is asked for; none touches another that blew onto the same end
 */
export function gustsSeen(told: readonly WindTold[], asked: { readonly from: EpochS; readonly until: EpochS; readonly fireEndHeadingDeg: number }): readonly GustStretch[] {
  const found: GustStretch[] = [];
  told.forEach(({ seenAt, gustMPerS, fromDeg }, nth) => {
    const from = Math.max(asked.from, seenAt) as EpochS;
    const until = Math.min(asked.until, later(seenAt, SEEN_WIND_HOLDS_S), told[nth + 1]?.seenAt ?? asked.until) as EpochS;
    if (gustMPerS < STRONG_GUST_M_PER_S || until <= from) return;
    const onto = endOnto({ fromDeg, fireEndDeg: asked.fireEndHeadingDeg });
    const last = found.at(-1);
    if (last?.until === from && last.onto === onto) found[found.length - 1] = { ...last, until };
    else found.push({ from, until, onto });
  });
  return found;
}
