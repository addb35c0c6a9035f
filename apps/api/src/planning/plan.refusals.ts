import type { RoundRefusal, Violation } from '@stokehold/scheduling/rounds';
import { refused } from '../platform/index.js';

/** A rule of the night as people know it. */
export type Rule =
  | 'skill' | 'shift' | 'people' | 'earliest' | 'break-owner' | 'twice' | 'two-things-at-once' | 'walk' | 'absent' | 'break-window' | 'frozen' | 'no-place' | 'latest-safe' | 'pin' | 'order' | 'other';

const SENTENCES: { readonly [R in Rule]: string } = {
  skill: 'They do not have the skill for it. Choose somebody who has.',
  shift: 'It would lie outside their hours. Choose another time or another person.',
  people: 'It needs another number of people. Choose as many as it needs.',
  earliest: 'It may not begin so early. Choose a later time.',
  'break-owner': 'A break belongs to its person and cannot be given away.',
  twice: 'Something was decided about this work already. Take that back first.',
  'two-things-at-once': 'They would do two things at once. Choose another time or another person.',
  walk: 'They cannot walk there in time. Choose a later time or somebody nearer.',
  absent: 'They are not there then. Choose somebody who is.',
  'break-window': 'A break would lie outside its window. Choose a time within it.',
  frozen: 'It has begun or is about to. Choose work that is still to come.',
  'no-place': 'It would have no place in the plan then. Choose another time or another person.',
  'latest-safe': 'A fire would pass latest safe with it. Choose another time or another person, or ask what would happen first.',
  pin: 'It does not go with something that was decided before. Take one of the two back.',
  order: 'The checks of a pit follow each other. Choose a time between the one before and the one after.',
  other: 'The night would break a rule with it. Look at the hours and breaks of those it is about.',
};

/** Says which rule a plan would break; it stays as it was. */
export const ruleBroken = (rule: Rule, about: Readonly<Record<string, string | number>> = {}): never => refused('plan-breaks-rule', SENTENCES[rule], { rule, ...about });

const OF_VIOLATION: Partial<Record<Violation['code'], Rule>> = {
  skill: 'skill', 'outside-shift': 'shift', 'wrong-number-of-people': 'people', 'before-earliest': 'earliest', 'break-owner': 'break-owner',
  'two-things-at-once': 'two-things-at-once', 'cannot-walk-there': 'walk', absent: 'absent', 'break-outside-window': 'break-window', 'frozen-changed': 'frozen',
  pin: 'pin', 'checks-out-of-order': 'order', 'checks-overlap': 'order',
};
/** The first fault of a plan that failed its check, as the rule it breaks. */
export function ruleOfFaults([first]: readonly string[]): Rule {
  const { code } = JSON.parse(first ?? '{}') as { readonly code?: Violation['code'] };
  return (code && OF_VIOLATION[code]) ?? 'other';
}

/** A night that cannot be planned, said by the rule that is against it. */
export function rulesBroken(refusal: RoundRefusal): never {
  if (refusal.code === 'pin-against-rule') return ruleBroken(refusal.rule);
  if (refusal.code === 'break-outside-shift' || refusal.code === 'break-backwards') return ruleBroken('break-window', { personId: refusal.personId });
  return ruleBroken('other');
}
