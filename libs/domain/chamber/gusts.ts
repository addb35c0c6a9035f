import type { EpochS, PitId } from '../quantity/index.js';
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
/** Wind within so much of an end blows onto it. Source: our own choice; at 60 degrees the pressure on a wall is a fifth. */
const ONTO_RAD = Math.PI / 3;

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
      const angle = windFromFireEndRad({ fromDeg, fireEndDeg: fireEndHeadingDeg });
      const end = angle <= ONTO_RAD ? 'firebox' : angle >= Math.PI - ONTO_RAD ? 'stack' : undefined;
      return end ? [{ pitId: id, at: from, onto: end, gustMPerS }] : [];
    });
    return onto.slice(0, 1);
  });
}
