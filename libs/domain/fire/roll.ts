import { type RandomStream, randomStream, seedFrom } from '../quantity/index.js';
import { type FireBelief, memberAt } from './belief.js';
import { type Flows, newFlows, type StepInputs, stepInputsOf } from './flows.js';
import { MEMBER_NUMBERS } from './layout.js';
import { type Wander, wanderMember, wanderOf } from './noise.js';
import type { FireParameters } from './parameters.js';
import type { Surroundings } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { STEP_S, stepFire } from './step.js';

/** Some members of a belief on their way into the future, all with chance fixed beforehand: so that two plans meet the same night. */
export interface Roll {
  readonly p: FireParameters;
  readonly inputs: StepInputs;
  readonly count: number;
  /** Four normal numbers a member and minute. */
  readonly chance: Float64Array;
  readonly wander: Wander;
  readonly flows: Flows;
}
/** Rows of the rolled members, and how many places are taken on the grate. */
export interface RolledState {
  readonly x: Float64Array;
  pieces: number;
}

/**
 * Sets up a roll of `count` members, spread evenly over the ensemble, for at most `minutes`.
 * Chance comes from the belief's seed and instant: the same belief meets the same future.
 */
export function startRoll(belief: FireBelief, around: Surroundings, count: number, minutes: number): Roll & { readonly start: RolledState } {
  const p = parametersOf(belief.shape);
  const total = belief.members.length / MEMBER_NUMBERS;
  const x = new Float64Array(count * MEMBER_NUMBERS);
  for (let i = 0; i < count; i++) {
    const from = memberAt(Math.floor(((i + 0.5) * total) / count));
    x.set(belief.members.subarray(from, from + MEMBER_NUMBERS), memberAt(i));
  }
  const random: RandomStream = randomStream(seedFrom(belief.seed, 'ahead', belief.at));
  const chance = new Float64Array(count * minutes * 4);
  for (let i = 0; i < chance.length; i++) chance[i] = random.normal();
  return {
    p, count, chance, start: { x, pieces: belief.pieces }, flows: newFlows(), wander: wanderOf(STEP_S),
    inputs: stepInputsOf(p, around, belief.position, STEP_S),
  };
}

/** The same members once more, to try another plan on. */
export const copyOf = (state: RolledState): RolledState => ({ x: state.x.slice(), pieces: state.pieces });

/** One minute of all rolled members; `minute` counts from the start of the roll. Changes `state`. */
export function rollMinute(roll: Roll, state: RolledState, minute: number): void {
  const { p, inputs, flows, wander, chance, count } = roll;
  for (let m = 0; m < count; m++) {
    const member = memberAt(m);
    wanderMember(state.x, member, wander, chance, (minute * count + m) * 4);
    stepFire(p, state.x, member, state.pieces, inputs, flows);
  }
}
