import { z } from 'zod';
import { commandKey, instant, personId, pitId, seconds } from './field.js';
import { assignment, planChange, work } from './plan.js';
import { skill } from './yard.js';

const levelName = z.enum(['unsafeS', 'unsafeChecks', 'unplaced', 'pastLatestS', 'lateWeightedS', 'tasksLateS', 'uneven', 'unevenUnpleasant', 'promises', 'walkS']);
/** What one level of the plan would cost more (positive) or less; `uneven` in millionths of the shift, promises in half units. */
export const levelCost = z.object({ level: levelName, by: z.number().int() });
export type LevelCost = z.infer<typeof levelCost>;
/** Why somebody may not do a piece of work: the first rule that forbids it, and what they are busy with. */
export const hindranceView = z.object({
  personId, code: z.enum(['skill', 'pinned-elsewhere', 'not-on-shift', 'absent', 'on-break', 'busy', 'too-far']), work: work.nullable(),
});
export type HindranceView = z.infer<typeof hindranceView>;
export const relaxation = z.discriminatedUnion('code', [
  z.object({ code: z.literal('drop-pin') }),
  z.object({ code: z.literal('skip-break'), personId }),
  z.object({ code: z.literal('later-latest'), byS: z.number().int() }),
  z.object({ code: z.literal('teach-skill'), personId, skill }),
  z.object({ code: z.literal('one-person-more'), skill: skill.nullable() }),
]);
export type Relaxation = z.infer<typeof relaxation>;

/** Which work is asked about, as it stands in an address. */
export const askWhy = z.object({ kind: z.enum(['check', 'task', 'break']), id: z.uuid(), nth: z.coerce.number().int().min(1).default(1) });

/** Why this person, who else at what cost, and why not in time. */
export const whyView = z.object({
  work,
  assignment: assignment.nullable(),
  reason: z.enum(['only-one-able', 'nearest', 'evens-load', 'pinned', 'frozen', 'own-break']).nullable(),
  others: z.array(z.object({ people: z.array(personId), startsAt: instant, costs: z.array(levelCost) })),
  hindered: z.array(hindranceView),
  state: z.enum(['in-time', 'late', 'past-latest', 'unplaced']),
  lateS: z.number().int(),
  hindrances: z.array(hindranceView),
  relax: relaxation.nullable(),
});
export type WhyView = z.infer<typeof whyView>;

/** Something that might happen tonight. */
export const supposition = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('person-less'), personId, fromAt: instant }),
  z.strictObject({ code: z.literal('person-late'), personId, byS: seconds.min(60).max(12 * 3600) }),
  z.strictObject({ code: z.literal('pit-more'), pitId, lightAt: instant }),
  z.strictObject({ code: z.literal('break-moved'), breakId: z.uuid(), startsAt: instant }),
  z.strictObject({ code: z.literal('work-given'), work, people: z.array(personId).min(1).max(2).nullable(), startsAt: instant.nullable() }),
]);
export type Supposition = z.infer<typeof supposition>;
export const askWhatIf = z.strictObject({ what: supposition });
export const whatIfView = z.object({
  changes: z.array(planChange),
  costs: z.array(levelCost),
  unplaced: z.array(work),
  pastLatest: z.array(work),
  failing: z.array(z.object({ fromAt: instant, untilAt: instant, skill: skill.nullable(), missingPeople: z.number() })),
});
export type WhatIfView = z.infer<typeof whatIfView>;

/** Somebody decides who does a piece of work, when it begins, or both; with neither the decision is taken back. */
export const pinWork = z.strictObject({ key: commandKey, work, people: z.array(personId).min(1).max(2).nullable(), startsAt: instant.nullable() });
export type PinWork = z.infer<typeof pinWork>;
