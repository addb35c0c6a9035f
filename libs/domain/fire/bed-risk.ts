import { normalBelow, randomStream, requireRange, seedFrom } from '../quantity/index.js';
import { type FireBelief, memberAt, MEMBERS } from './belief.js';
import { lifeSum, NEARLY_OUT_FRAC } from './grades.js';
import { standardPiece } from './kindle.js';
import { BED_KG, LOG_BURN, LOG_COAL, LOG_LOSS, MEMBER_NUMBERS } from './layout.js';
import { parametersOf } from './pit-shape.js';

/** A bed under so much burning wood is fed by it, in standard splits: it comes back by itself. Source: our fit, P7. */
const FEEDS_SPLITS = 0.35;

/**
 * Share of all that is believed possible in which the loose bed is nearly out and no burning wood brings it back. Forty members tell
 * no share below 1/40; the logs of their beds are near normal, so the tail is read from their middle and spread.
 *
 *     share = Phi((ln m_low - mean ln m_b) / sd ln m_b) x share of members that nothing feeds          Source: our fit
 *
 * @returns 0 to 1
 */
export function bedTailFrac(belief: FireBelief): number {
  const { members: x, pieces } = belief;
  const p = parametersOf(belief.shape);
  const standardKg = standardPiece(belief.shape).dryKg;
  let count = 0;
  let sum = 0;
  let squares = 0;
  for (let m = 0; m < MEMBERS; m++) {
    const member = memberAt(m);
    if (lifeSum(x, member, pieces, standardKg) > FEEDS_SPLITS) continue;
    const log = Math.log(x[member + BED_KG]!);
    count++;
    sum += log;
    squares += log * log;
  }
  if (count === 0) return 0;
  const mean = sum / count;
  const sd = Math.max(0.05, Math.sqrt(Math.max(0, squares / count - mean * mean)));
  return (count / MEMBERS) * normalBelow((Math.log(NEARLY_OUT_FRAC * p.bedKg) - mean) / sd);
}

/** Spread of the kernel that tells the drawn fires of one member apart: logs of bed and slow multipliers. Source: our fit. */
const KERNEL = [[LOG_LOSS, 0.05], [LOG_BURN, 0.05], [LOG_COAL, 0.06]] as const;
const BED_KERNEL = 0.12;

/**
 * The belief widened to more draws than it has members, each a member shaken a little: for shares that forty cannot resolve.
 *
 * @param draws  40 to 1000
 */
export function widened(belief: FireBelief, draws: number): FireBelief {
  requireRange('draws', draws, MEMBERS, 1000);
  const random = randomStream(seedFrom(belief.seed, 'widened', belief.at));
  const members = new Float64Array(draws * MEMBER_NUMBERS);
  for (let i = 0; i < draws; i++) {
    const from = memberAt(i % MEMBERS);
    const to = memberAt(i);
    members.set(belief.members.subarray(from, from + MEMBER_NUMBERS), to);
    if (i < MEMBERS) continue;
    members[to + BED_KG] = members[to + BED_KG]! * Math.exp(BED_KERNEL * random.normal());
    for (const [at, sd] of KERNEL) members[to + at] = members[to + at]! + sd * random.normal();
  }
  return { ...belief, members };
}
