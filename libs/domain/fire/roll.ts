import { randomStream, seedFrom } from '../quantity/index.js';
import { type FireBelief, memberAt } from './belief.js';
import { type Flows, newFlows, type StepInputs, stepInputsOf } from './flows.js';
import { MEMBER_NUMBERS } from './layout.js';
import { airWanderOf, slowWanderOf, type Wander, wanderMember } from './noise.js';
import type { FireParameters } from './parameters.js';
import type { Surroundings } from './pit.js';
import { parametersOf } from './pit-shape.js';
import { STEP_S, stepFire } from './step.js';

/** The slow multipliers wander over hours: every so many minutes is often enough. */
const SLOW_MIN = 5;

/** Some members of a belief on their way into the future, all with chance fixed beforehand: so that two plans meet the same night. */
export interface Roll {
  readonly p: FireParameters;
  readonly inputs: StepInputs;
  readonly count: number;
  /** Normal numbers by minute and member: one for the air, and every fifth minute one for each slow multiplier. */
  readonly airChance: Float64Array;
  readonly slowChance: Float64Array;
  readonly airWander: Wander;
  readonly slowWander: Wander;
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
  const chance = (of: string, length: number) => {
    const random = randomStream(seedFrom(belief.seed, of, belief.at));
    const normals = new Float64Array(length);
    for (let i = 0; i < length; i++) normals[i] = random.normal();
    return normals;
  };
  const slowWander = slowWanderOf(SLOW_MIN * STEP_S);
  return {
    p, count, start: { x, pieces: belief.pieces }, flows: newFlows(),
    airWander: airWanderOf(STEP_S), airChance: chance('air ahead', count * minutes),
    slowWander, slowChance: chance('ahead', count * Math.ceil(minutes / SLOW_MIN) * slowWander.length),
    inputs: stepInputsOf(p, around, belief.position, STEP_S),
  };
}

/** The same members once more, to try another plan on. */
export const copyOf = (state: RolledState): RolledState => ({ x: state.x.slice(), pieces: state.pieces });

/** One minute of all rolled members; `minute` counts from the start of the roll, `inputs` hold another air. Changes `state`. */
export function rollMinute(roll: Roll, state: RolledState, minute: number, inputs: StepInputs = roll.inputs): void {
  const { p, flows, count, airWander, slowWander } = roll;
  const slow = minute % SLOW_MIN === 0;
  for (let m = 0; m < count; m++) {
    const member = memberAt(m);
    wanderMember(state.x, member, airWander, roll.airChance, minute * count + m);
    if (slow) wanderMember(state.x, member, slowWander, roll.slowChance, ((minute / SLOW_MIN) * count + m) * slowWander.length);
    stepFire(p, state.x, member, state.pieces, inputs, flows);
  }
}
