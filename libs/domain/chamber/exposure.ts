import type { FirePosition } from '../fire/index.js';
import { requireRange } from '../quantity/index.js';
import { radiantFluxWPerM2 } from './radiant.js';

/** What glows as food sees it through the throat: this wide and high, of the firebox's inside width. Source: our fit to P22 and P23 of tests/published/common-practice.test.ts. */
const GLOW_WIDTH_FRAC = 0.55;
const GLOW_HEIGHT_FRAC = 0.2;
/** Temperature of a strong coal bed's surface, K; common practice says above 1000 °F (811 K), no source. */
const GLOW_K = 900;
const FOOD_K = 397;
/** Of meat once it is dark and dry. Source: handbook tables of emissivity, from memory. */
const FOOD_EMISSIVITY = 0.9;
/** How far behind the throat the fire lies, of the firebox's inside length. Source: common practice, no source. */
const BEHIND_THROAT_FRAC: Readonly<Record<FirePosition, number>> = { door: 0.75, middle: 0.5, throat: 0.1 };

/**
 * Radiant heat on a side that faces the fire, in the middle of each zone of a chamber.
 *
 *     q = F eps sigma (T_glow^4 - T_food^4),  F by [HOWELL] B-3 at the zone's middle plus the fire's way behind the throat
 *
 * @param pit.zoneLengthsM  from the fire end, each above 0
 * @param pit.fireboxLengthM, pit.fireboxDiameterM  inside, 0.2 to 3 m
 * @param pit.position      where the fire lies
 * @returns W/m2 by zone, falling with the distance. Held to chamber/exposure.test.ts
 */
export function zoneExposuresWPerM2(pit: {
  readonly zoneLengthsM: readonly number[];
  readonly fireboxLengthM: number;
  readonly fireboxDiameterM: number;
  readonly position: FirePosition;
}): readonly number[] {
  requireRange('firebox length (m)', pit.fireboxLengthM, 0.2, 3);
  requireRange('firebox width (m)', pit.fireboxDiameterM, 0.2, 3);
  let fromM = pit.fireboxLengthM * BEHIND_THROAT_FRAC[pit.position];
  return pit.zoneLengthsM.map((lengthM) => {
    requireRange('zone length (m)', lengthM, 0.01, 20);
    const distanceM = fromM + lengthM / 2;
    fromM += lengthM;
    return radiantFluxWPerM2({
      throatWidthM: GLOW_WIDTH_FRAC * pit.fireboxDiameterM, throatHeightM: GLOW_HEIGHT_FRAC * pit.fireboxDiameterM, distanceM, throatK: GLOW_K, foodK: FOOD_K, emissivityFrac: FOOD_EMISSIVITY,
    });
  });
}
