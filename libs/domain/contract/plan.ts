import { z } from 'zod';
import { frac, instant, personId, pitId, taskId } from './field.js';
import { skill } from './yard.js';

/** What an assignment is about. */
export const work = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('check'), pitId, nth: z.number().int() }),
  z.object({ kind: z.literal('task'), taskId }),
  z.object({ kind: z.literal('break'), breakId: z.uuid() }),
]);
export type Work = z.infer<typeof work>;
export const assignment = z.object({
  work,
  people: z.array(personId),
  startsAt: instant,
  endsAt: instant,
  lateS: z.number().int(),
  pastLatestS: z.number().int(),
  /** Somebody decided who does it, or when. */
  pinned: z.boolean(),
});
export type Assignment = z.infer<typeof assignment>;
/** What began a change: read with the work that ran over or took the place, and the person it is about. */
export const changeCause = z.object({
  code: z.enum(['person-not-there', 'due-moved', 'work-before-ran-over', 'not-reported', 'made-room', 'new-work', 'not-needed', 'no-place']),
  personId: personId.nullable(),
  work: work.nullable(),
});
export type ChangeCause = z.infer<typeof changeCause>;
export const planChange = z.object({
  work,
  code: z.enum(['new', 'gone', 'moved', 'other-person', 'moved-other-person']),
  from: z.object({ people: z.array(personId), startsAt: instant }).nullable(),
  to: z.object({ people: z.array(personId), startsAt: instant }).nullable(),
  because: changeCause,
});
export type PlanChange = z.infer<typeof planChange>;
export const planCause = z.enum(['first', 'check', 'due-moved', 'presence', 'break', 'task', 'shift', 'pit', 'minute', 'by-hand']);
export const loadHour = z.object({
  fromAt: instant, untilAt: instant, skill: skill.nullable(), loadFrac: z.number(), fails: z.boolean(), missingPeople: z.number(),
  mend: z.enum(['none', 'move-tasks', 'call-people', 'bank-fires-or-call']),
});
/** How a plan was found: the same facts, seed and iterations find it again. */
export const planSearch = z.object({ seed: z.number().int(), iterations: z.number().int(), gapWeightedS: z.number().int(), improved: z.boolean() });
/** Why a plan was made, with the pit or the person it is about; of a decision by hand the person who made it. */
export const planBecause = z.object({ cause: planCause, pitId: pitId.nullable(), personId: personId.nullable() });
/** What a person decided a while ago and what it changed: listed beside newer changes until `listedUntil`. */
export const planDecision = z.object({ madeAt: instant, listedUntil: instant, because: planBecause, changes: z.array(planChange) });
export type PlanDecision = z.infer<typeof planDecision>;
export const planView = z.object({
  madeAt: instant,
  because: planBecause,
  assignments: z.array(assignment),
  unplaced: z.array(z.object({ work, reason: z.string() })),
  load: z.array(loadHour),
  changes: z.array(planChange),
  /** The latest first; that of this plan itself stands in `because` and `changes`. */
  decisions: z.array(planDecision),
  /** Weighted seconds of lateness in the plan, and a proven bound below which no plan can go. */
  lateWeightedS: z.number(),
  boundWeightedS: z.number(),
  evenness: frac.nullable(),
  search: planSearch,
});
export type PlanView = z.infer<typeof planView>;
