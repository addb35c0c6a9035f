import { fromIso, type EpochS } from '@stokehold/domain/quantity';
import { lightTask, type RunningShift } from '@stokehold/domain/shift';
import type { Setup } from '@stokehold/domain/contract';
import { problemOfNight, type NightFacts, type NightTask } from '@stokehold/scheduling/night';
import { loadOf, type LoadHour } from '@stokehold/scheduling/rounds';
import type { Night } from './shift-of-draft.js';

type Yard = Pick<Setup, 'yard' | 'pits' | 'crew'>;

/** How much a drafted night asks for, hour by hour, against those who would be there: by the same reckoning as the planner's. */
export function loadOfDraft(night: Night, yard: Yard): readonly LoadHour[] {
  const shift = shiftOf(night, yard);
  const facts: NightFacts = {
    now: shift.from,
    shift,
    woodPlace: yard.yard.woodPlace,
    walkSpeedMPerS: yard.yard.walkSpeedMPerS,
    pits: yard.pits.filter((pit) => !pit.retired).map(({ id, xM, yM }) => ({ id, xM, yM })),
    fires: [],
    looks: [],
    tasks: shift.pits.flatMap((pit) => lighting(pit, shift)),
    shown: [],
  };
  return loadOf(problemOfNight(facts));
}

function shiftOf(night: Night, yard: Yard): RunningShift {
  const at = (iso: string): EpochS => fromIso(iso);
  return {
    id: night.id,
    from: at(night.startsAt),
    until: at(night.endsAt),
    people: night.people.map((person) => {
      const member = yard.crew.find(({ id }) => id === person.personId);
      return {
        id: person.personId, name: member?.name ?? '', skills: member?.skills ?? [], presence: 'here', wasAway: [],
        startsAt: at(person.startsAt), endsAt: at(person.endsAt),
        breaks: person.breaks.map((rest) => ({ id: rest.id, lengthS: rest.lengthS, earliestAt: at(rest.earliestAt), latestAt: at(rest.latestAt) })),
      };
    }),
    pits: night.pits.map(({ pitId, band, lightAt }) => ({ pitId, band, lightAt: at(lightAt) })).sort((a, b) => a.lightAt - b.lightAt),
  };
}

function lighting({ pitId, lightAt }: RunningShift['pits'][number], shift: RunningShift): readonly NightTask[] {
  const task = lightTask(lightAt, shift.from);
  // The board only counts: the id of a lighting that is not planned yet is never sent anywhere.
  const id = `light-${pitId}` as NightTask['id'];
  return task ? [{ ...task, id, shiftId: shift.id, kind: 'light', pitId, people: 1, doneAt: null, doneBy: null }] : [];
}

/** The hours of everybody together, and those of a skill only where that skill is what is missing. */
export function hoursShown(hours: readonly LoadHour[]): { readonly all: readonly LoadHour[]; readonly lacking: readonly LoadHour[] } {
  const all = hours.filter(({ skill }) => skill === undefined);
  const failsAnyway = new Set(all.filter(({ fails }) => fails).map(({ fromAt }) => fromAt));
  return { all, lacking: hours.filter(({ skill, fails, fromAt }) => skill !== undefined && fails && !failsAnyway.has(fromAt)) };
}
