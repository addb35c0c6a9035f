import { epochS, later, MINUTE_S, type PersonId, type PitId, type TaskId } from '@stokehold/domain/quantity';
import type { RoundPerson, RoundPit, RoundProblem, RoundTask } from './problem.js';

// Small nights written by hand, in minutes from their start: for worked cases, where a page of seconds would hide the point.

export const HAND_START = epochS(1_800_000_000);
export const minute = (minutes: number) => later(HAND_START, minutes * MINUTE_S);

/** A pit first due at `due`, with a gap of `gap` minutes; latest safe 1.4 gaps, earliest 0.5. */
export function handPit(id: string, due: number, { gap = 30, check = 5, weight = 1, place = 'yard', skill }: { gap?: number; check?: number; weight?: number; place?: string; skill?: string } = {}): RoundPit {
  const s = (minutes: number) => Math.round(minutes * MINUTE_S);
  return {
    id: id as PitId, place, weight, checkS: s(check), gap: { earliestS: s(0.5 * gap), dueS: s(gap), latestSafeS: s(1.4 * gap) },
    first: { earliestAt: minute(Math.min(0, due - 0.5 * gap)), dueAt: minute(due), latestSafeAt: minute(due + 0.4 * gap) }, ...(skill === undefined ? {} : { skill }),
  };
}

export function handPerson(id: string, { from = 0, until = 240, skills = [], place = 'yard', breaks = [], absent }: { from?: number; until?: number; skills?: readonly string[]; place?: string; breaks?: RoundPerson['breaks']; absent?: RoundPerson['absent'] } = {}): RoundPerson {
  return { id: id as PersonId, startsAt: minute(from), endsAt: minute(until), skills, atPlace: place, freeFrom: minute(from), breaks, ...(absent ? { absent } : {}) };
}

export function handTask(id: string, due: number, length: number, { earliest = 0, latest = 240, people = 1, place = 'yard', skill, weight }: { earliest?: number; latest?: number; people?: 1 | 2; place?: string; skill?: string; weight?: number } = {}): RoundTask {
  return {
    id: id as TaskId, kind: 'haul', place, lengthS: length * MINUTE_S, earliestAt: minute(earliest), dueAt: minute(due), latestAt: minute(latest), people,
    ...(skill === undefined ? {} : { skill }), ...(weight === undefined ? {} : { weight }),
  };
}

export const handBreak = (id: string, earliest: number, latest: number, length = 30) => ({ id, lengthS: length * MINUTE_S, earliestAt: minute(earliest), latestAt: minute(latest) });

/** Four hours in one place unless told otherwise. */
export const handNight = (parts: Partial<RoundProblem>): RoundProblem => ({
  from: HAND_START, until: minute(240), places: ['yard'], walkS: [[0]], people: [], pits: [], tasks: [], frozen: [], pins: [], promises: [], ...parts,
});
