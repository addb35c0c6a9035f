import type { PersonId } from '@stokehold/domain/quantity';
import { minute } from '../hand-night.js';
import type { RoundPlan } from '../plan.js';
import type { Work } from '../problem.js';

type Line = readonly [work: Work, people: readonly string[], from: number, until: number];

/** A plan written by hand, in minutes from the start of a night written by hand: who does what, and nothing else of it. */
export function planShownByHand(lines: readonly Line[]): RoundPlan {
  return {
    assignments: lines.map(([work, people, from, until]) => ({
      work, personIds: people as readonly PersonId[], startsAt: minute(from), endsAt: minute(until), lateS: 0, pastLatestS: 0, earlyS: 0, reason: { code: 'nearest', late: [] },
    })),
    unplaced: [],
    levels: { unsafeS: 0, unsafeChecks: 0, unplaced: 0, pastLatestS: 0, lateWeightedS: 0, tasksLateS: 0, uneven: 0, unevenUnpleasant: 0, promises: 0, walkS: 0 },
    bound: { unsafeS: 0, lateWeightedS: 0, peopleForDue: 0, peopleForSafe: 0, peopleIfPitsBound: 0, busiestS: 0 },
  };
}
