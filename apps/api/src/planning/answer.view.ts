import type { HindranceView, PlanChange, Relaxation as RelaxationView, Skill, WhatIfView, WhyView, Work } from '@stokehold/domain/contract';
import { toIso } from '@stokehold/domain/quantity';
import { type Hindrance, type PlanChange as Change, type Relaxation, type WhatIf, workKey, type WhyNot, type WhyPerson } from '@stokehold/scheduling/rounds';
import type { NightNow } from './night-now.js';
import { assignmentView } from './plan.view.js';

const hindranceView = ({ personId, code, work }: Hindrance): HindranceView => ({ personId, code, work: work ?? null });

function relaxView(relax: Relaxation): RelaxationView {
  if (relax.code === 'one-person-more') return { code: relax.code, skill: (relax.skill as Skill | undefined) ?? null };
  return relax.code === 'teach-skill' ? { ...relax, skill: relax.skill as Skill } : relax;
}

/** Everything that can be said of one piece of work of the plan. */
export function whyView(work: Work, { person, not }: { readonly person: WhyPerson | undefined; readonly not: WhyNot | undefined }, { current }: NightNow): WhyView {
  const shown = current.assignments.find((one) => workKey(one.work) === workKey(work));
  return {
    work,
    assignment: shown ? assignmentView(shown) : null,
    reason: person?.reason ?? null,
    others: (person?.others ?? []).map(({ personIds, startsAt, costs }) => ({ people: [...personIds], startsAt: toIso(startsAt), costs: [...costs] })),
    hindered: (person?.hindered ?? []).map(hindranceView),
    state: not?.state ?? 'in-time',
    lateS: not?.lateS ?? 0,
    hindrances: (not?.hindrances ?? []).map(hindranceView),
    relax: not?.relax ? relaxView(not.relax) : null,
  };
}

const side = (people: Change['personsBefore'], at: Change['startBefore']): PlanChange['from'] => (at === undefined ? null : { people: [...people], startsAt: toIso(at) });
type Known = (work: Work) => boolean;

const changeView = ({ work, code, personsBefore, personsAfter, startBefore, startAfter, because }: Change): PlanChange => ({
  work, code, from: side(personsBefore, startBefore), to: side(personsAfter, startAfter), because: { code: because.code, personId: because.personId ?? null, work: because.work ?? null },
});

/** Only what has a name on the screens: the lighting of a pit that is only supposed is left to the hours that fail. */
export function whatIfView({ changes, costs, unplaced, pastLatest, failing }: WhatIf, { facts }: NightNow): WhatIfView {
  const known: Known = (work) => work.kind !== 'task' || facts.tasks.some(({ id }) => id === work.taskId);
  return {
    changes: changes.filter(({ work }) => known(work)).map(changeView),
    costs: [...costs],
    unplaced: unplaced.filter(known),
    pastLatest: [...pastLatest],
    failing: failing.map(({ fromAt, untilAt, skill, missingPeople }) => ({ fromAt: toIso(fromAt), untilAt: toIso(untilAt), skill: (skill as Skill | undefined) ?? null, missingPeople })),
  };
}

