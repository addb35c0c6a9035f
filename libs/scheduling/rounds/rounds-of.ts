import type { PersonId } from '@stokehold/domain/quantity';
import { PARAMETERS } from './problem.js';
import type { Assignment, Round, RoundPlan } from './plan.js';

/** The rounds of one person: runs of checks and tasks without a break or a wait of more than `waitS` between them. */
export function roundsOf(plan: RoundPlan, personId: PersonId, waitS: number = PARAMETERS.roundWaitS.usual): readonly Round[] {
  const runs: Assignment[][] = [];
  let open = false;
  for (const assignment of plan.assignments) {
    if (!assignment.personIds.includes(personId)) continue;
    const run = runs.at(-1);
    if (assignment.work.kind === 'break') open = false;
    else if (open && run && assignment.startsAt - run.at(-1)!.endsAt <= waitS) run.push(assignment);
    else {
      runs.push([assignment]);
      open = true;
    }
  }
  return runs.map((assignments) => ({ personId, startsAt: assignments[0]!.startsAt, endsAt: assignments.at(-1)!.endsAt, assignments }));
}
