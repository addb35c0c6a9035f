import { type DryBasis, dryBasis, ok, refuse, requireRange, type Result, toDryBasis, toWetBasis, type WetBasis, wetBasis } from '../quantity/index.js';

/** How a meter's own paper corrects a species: true = (shown - b) / a, both in per cent of dry mass. */
export interface SpeciesCorrection {
  readonly a: number;
  readonly bPercent: number;
}
/** A meter that is set for the species, or whose paper gives no correction for it. */
export const NO_CORRECTION: SpeciesCorrection = { a: 1, bPercent: 0 };

/** What somebody read off a pin meter. */
export interface MeterReading {
  /** As shown: per cent, of the dry mass as pin meters do, or of the wet mass where the paper of the meter says so. */
  readonly shownPercent: number;
  readonly basis: 'dry' | 'wet';
  /** Of the wood, not of the air, where it was taken. */
  readonly woodTempC?: number;
  readonly species?: SpeciesCorrection;
  /** The freshly split inside; the outside of a split is 3 to 10 points drier. Source: common practice, no source. */
  readonly face: 'inside' | 'outside';
}

/** A corrected reading with what may be believed of it. */
export interface Moisture {
  readonly moisture: DryBasis;
  readonly asWet: WetBasis;
  /** One standard deviation. */
  readonly deviation: number;
  /** Fibre saturation or above: the meter only says that it is wet. */
  readonly atLeast: boolean;
  readonly remarks: readonly MeterRemark[];
}
export type MeterRemark = 'above-fibre-saturation' | 'below-meter-range' | 'wood-temperature-unknown' | 'outside-face';
export type MeterRefusal = { readonly code: 'not-a-moisture'; readonly percent: number } | { readonly code: 'wood-temperature-impossible'; readonly tempC: number };

/** A pin meter speaks from 6 % to fibre saturation, about 30 %. [FPL-GTR-6] */
const METER_PERCENT: readonly [number, number] = [6, 30];
/** A corrected reading holds within 2 points. Source: the difference between two published corrections, tests/published/wood-meter.test.ts. */
const READING_DEVIATION = 0.02;
/** What is left to believe of a reading above fibre saturation. [FPL-GTR-6], the number from memory. */
const WET_DEVIATION = 0.1;
/** An outside face reads this much too dry, the middle of 3 to 10 points, and is this uncertain. Source: common practice, no source. */
const OUTSIDE_DRIER = 0.065;
const OUTSIDE_DEVIATION = 0.035;

/**
 * A pin meter's reading corrected for the temperature of the wood: cold wood reads low.
 *
 *     MC' = (R + 0.567 - 0.0260 t + 0.000051 t^2) / (0.881 * 1.0056^t),   t = T + 2.8      [GARRAHAN]
 *
 * @param shownPercent  R, per cent of dry mass, 0 to 100
 * @param woodTempC     T, -10 to 90 °C
 * @returns per cent of dry mass. Held to tests/published/wood-meter.test.ts
 */
export function atMeterTemp(shownPercent: number, woodTempC: number): number {
  requireRange('meter reading (%)', shownPercent, 0, 100);
  requireRange('temperature of the wood (°C)', woodTempC, -10, 90);
  const t = woodTempC + 2.8;
  return (shownPercent + 0.567 - 0.026 * t + 0.000051 * t * t) / (0.881 * 1.0056 ** t);
}

/**
 * What a meter reading says of the wood: first its basis, then its temperature, then its species, then its face. A reading over
 * fibre saturation is kept as `atLeast`, never as a figure to trust.
 *
 * @param reading  shown 0 to 100 %
 * @returns dry basis, with its deviation. Held to tests/published/wood-meter.test.ts
 */
export function readMeter(reading: MeterReading): Result<Moisture, MeterRefusal> {
  const { shownPercent, woodTempC } = reading;
  if (!(shownPercent >= 0 && shownPercent <= 100) || (reading.basis === 'wet' && shownPercent > 58)) return refuse({ code: 'not-a-moisture', percent: shownPercent });
  if (woodTempC !== undefined && !(woodTempC >= -10 && woodTempC <= 90)) return refuse({ code: 'wood-temperature-impossible', tempC: woodTempC });
  const dry = reading.basis === 'dry' ? shownPercent : toDryBasis(wetBasis(shownPercent / 100)) * 100;
  const warm = woodTempC === undefined ? dry : atMeterTemp(Math.min(dry, 100), woodTempC);
  const { a, bPercent } = reading.species ?? NO_CORRECTION;
  requireRange('species correction a', a, 0.3, 3);
  const percent = Math.max(0, (warm - bPercent) / a) + (reading.face === 'outside' ? OUTSIDE_DRIER * 100 : 0);
  const atLeast = percent > METER_PERCENT[1];
  const moisture = dryBasis(Math.min(1.4, percent / 100));
  return ok({
    moisture,
    asWet: toWetBasis(moisture),
    deviation: atLeast ? WET_DEVIATION : Math.hypot(READING_DEVIATION, reading.face === 'outside' ? OUTSIDE_DEVIATION : 0, woodTempC === undefined ? READING_DEVIATION / 2 : 0),
    atLeast,
    remarks: [
      ...(atLeast ? ['above-fibre-saturation' as const] : []),
      ...(percent < METER_PERCENT[0] ? ['below-meter-range' as const] : []),
      ...(woodTempC === undefined ? ['wood-temperature-unknown' as const] : []),
      ...(reading.face === 'outside' ? ['outside-face' as const] : []),
    ],
  });
}
