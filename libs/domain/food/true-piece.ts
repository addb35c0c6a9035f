import { type EpochS, later } from '../quantity/index.js';
import type { CoreReading, FoodCook } from './cook.js';
import { probeC } from './correct.js';
import { type Trait, TRAIT_PLACE, TRAITS } from './prior.js';
import { doneS, rollMember, startRoll, workSurface } from './roll.js';

/** One piece as it really is, for practice nights and for tests: what a probe near its core shows, and when it is done. */
export interface TruePiece {
  readonly readings: readonly CoreReading[];
  readonly doneAt: EpochS | undefined;
  /** Raw mass lost as vapour and drip by then. */
  readonly lostFrac: number;
}

/**
 * A piece with traits of its own in the air that it really has. It shares the model with the forecast: a real piece will be
 * forecast worse. Source: roll.ts.
 *
 * @param traits  log factors and shifts beside the model's middle, as in prior.ts; absent ones are the middle
 * @param everyS  time between two readings, s
 */
export function truePiece(cook: FoodCook, traits: Partial<Readonly<Record<Trait, number>>>, everyS: number): TruePiece {
  const roll = startRoll({ ...cook, members: 2 }, Float64Array.from({ length: 2 * TRAITS.length }, (_, i) => traits[TRAITS.find((trait) => TRAIT_PLACE[trait] === i % TRAITS.length)!] ?? 0));
  const surface = workSurface();
  const readings: CoreReading[] = [];
  let next = everyS;
  for (let step = 1; step <= roll.steps; step++) {
    rollMember(roll, 0, step - 1, step, 'seen', surface);
    if (roll.endS[step]! < next) continue;
    readings.push({ at: later(cook.onAt, roll.endS[step]!), tempC: probeC(roll, 0) });
    next = roll.endS[step]! + everyS;
  }
  const done = doneS(roll, 0);
  return { readings, doneAt: done < Infinity ? later(cook.onAt, done) : undefined, lostFrac: roll.lostFrac[0]! };
}
