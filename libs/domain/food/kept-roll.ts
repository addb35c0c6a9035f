import { CELLS } from './bodies.js';
import type { FoodCook } from './cook.js';
import { TRAITS } from './prior.js';
import { type Roll, shapeFromTraits } from './roll.js';

/** The rows of numbers in which the members of a roll stand. */
const standing = (roll: Roll): readonly Float64Array[] => {
  const { bodies, traits, coreDoneS, tenderDoneS, doseS, wrappedS, lostFrac, lastCoreC } = roll;
  return [traits, bodies.tempC, bodies.waterFrac, bodies.surfaceC, bodies.storedKgPerM2, bodies.evaporatedKgPerM2, bodies.dripKgPerM2, coreDoneS, tenderDoneS, doseS, wrappedS, lostFrac, lastCoreC];
};

/** A roll on its way, laid aside as plain data: about 0.2 MB for 200 members half way through a long cook. */
export interface KeptRoll {
  /** The cook without its air and its readings. */
  readonly of: string;
  readonly step: number;
  /** Air of the steps gone. */
  readonly airC: Float64Array;
  readonly airSdK: Float64Array;
  readonly rows: readonly Float64Array[];
  /** Core temperatures after each step gone, a row of `step + 1` for each member. */
  readonly cores: Float32Array;
}

/** Whatever of a cook the members follow from, beside its air and its readings. */
const named = ({ air: _air, readings: _readings, ...cook }: FoodCook) => JSON.stringify(cook);

/** A copy of a roll as it stands before a step. Source: none needed. */
export function laidAside(roll: Roll, step: number): KeptRoll {
  const { members } = roll.bodies;
  const cores = new Float32Array(members * (step + 1));
  for (let m = 0; m < members; m++) cores.set(roll.kept.subarray(m * (roll.steps + 1), m * (roll.steps + 1) + step + 1), m * (step + 1));
  return { of: named(roll.cook), step, airC: roll.airC.slice(0, step), airSdK: roll.airSdK.slice(0, step), rows: standing(roll).map((row) => row.slice()), cores };
}

const beginsWith = (row: Float64Array, begin: Float64Array) => begin.every((value, i) => value === row[i]);

/**
 * Takes a kept roll up in place of one that has just begun, if it is of the same cook in the same air. Source: none needed.
 *
 * @returns whether it was
 */
export function keptRoll(roll: Roll, kept: KeptRoll): boolean {
  if (kept.of !== named(roll.cook) || kept.rows[0]!.length !== roll.bodies.members * TRAITS.length || kept.rows[1]!.length !== roll.bodies.members * CELLS) return false;
  if (!beginsWith(roll.airC, kept.airC) || !beginsWith(roll.airSdK, kept.airSdK)) return false;
  standing(roll).forEach((row, nth) => row.set(kept.rows[nth]!));
  const { members } = roll.bodies;
  for (let m = 0; m < members; m++) {
    shapeFromTraits(roll, m);
    roll.kept.set(kept.cores.subarray(m * (kept.step + 1), (m + 1) * (kept.step + 1)), m * (roll.steps + 1));
  }
  return true;
}
