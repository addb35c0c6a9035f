import { epochS, HOUR_S } from '@stokehold/domain/quantity';
import type { LoadHour, LoadMend } from './plan.js';
import { parameter, type RoundPerson, type RoundProblem } from './problem.js';

/**
 * What the night asks for against who is there, hour by hour, for everybody and for each skill, before any planning.
 *
 *     needed = sum over pits of (check + walk to the nearest other pit) x hour / due gap + tasks spread over their windows
 *     load   = needed / (people there, less absences and breaks spread over their windows)
 *
 * A load over 1 cannot be on time. One person and equal slots with a load up to 5/6, walking in the slot and gaps cut to
 * whole slots, can always be kept (5/6 theorem, [KAWAMURA-2024]); in practice a load up to 0.80 is comfortable.
 * Held to rounds/dispatch.test.ts and tests/published/rounds-pinwheel.test.ts.
 */
export function loadOf(problem: RoundProblem): readonly LoadHour[] {
  const skills = [...new Set([...problem.pits, ...problem.tasks].flatMap(({ skill }) => (skill === undefined ? [] : [skill])))].sort();
  const hours: LoadHour[] = [];
  for (let from: number = problem.from; from < problem.until; from += HOUR_S) {
    const until = Math.min(problem.until, from + HOUR_S);
    for (const skill of [undefined, ...skills]) hours.push(hourOf(problem, from, until, skill));
  }
  return hours;
}

const overlapS = (from: number, until: number, otherFrom: number, otherUntil: number) => Math.max(0, Math.min(until, otherUntil) - Math.max(from, otherFrom));

function hourOf(problem: RoundProblem, from: number, until: number, skill: string | undefined): LoadHour {
  const asked = <T extends { readonly skill?: string }>(things: readonly T[]) => things.filter((one) => skill === undefined || one.skill === skill);
  let checksS = 0;
  let checksForSafeS = 0;
  for (const pit of asked(problem.pits)) {
    const burnsS = overlapS(from, until, problem.from, pit.keepUntil ?? problem.until);
    checksS += ((pit.checkS + walkToS(problem, pit.place)) * overlapS(from, until, Math.min(pit.first.dueAt, until), problem.until) * burnsS) / Math.max(1, until - from) / pit.gap.dueS;
    checksForSafeS += (pit.checkS * overlapS(from, until, Math.min(pit.first.latestSafeAt, until), problem.until) * burnsS) / Math.max(1, until - from) / pit.gap.latestSafeS;
  }
  const tasksS = asked(problem.tasks).reduce((sum, task) => {
    const windowFrom = Math.max(problem.from, task.earliestAt);
    const windowUntil = Math.max(windowFrom, task.latestAt) + task.lengthS;
    return sum + (task.people * task.lengthS * overlapS(from, until, windowFrom, windowUntil)) / (windowUntil - windowFrom);
  }, 0);
  const able = problem.people.filter((person) => skill === undefined || person.skills.includes(skill));
  const presentS = able.reduce((sum, person) => sum + thereS(person, from, until), 0);
  const neededS = Math.round(checksS + tasksS);
  const loadFrac = neededS / (presentS > 0 ? presentS : until - from);
  const fails = neededS > presentS;
  const missingPeople = fails ? Math.ceil((neededS - presentS) / (until - from)) : 0;
  const neededForSafeS = Math.round(checksForSafeS);
  return {
    fromAt: epochS(from), untilAt: epochS(until), ...(skill === undefined ? {} : { skill }), neededS, neededForSafeS, presentS: Math.round(presentS),
    loadFrac, fails, tight: loadFrac > parameter(problem, 'tightFrac'), missingPeople,
    mend: mendFor({ fails, missingPeople, checksFit: checksS <= presentS, safeFits: neededForSafeS <= presentS }),
  };
}

function mendFor(found: { fails: boolean; missingPeople: number; checksFit: boolean; safeFits: boolean }): LoadMend {
  if (!found.fails) return { code: 'none', people: 0 };
  if (found.checksFit) return { code: 'move-tasks', people: found.missingPeople };
  return { code: found.safeFits ? 'call-people' : 'bank-fires-or-call', people: found.missingPeople };
}

/** Walking that a check brings with it: to the nearest other pit, 0 where there is only one. */
function walkToS(problem: RoundProblem, place: string): number {
  const to = problem.places.indexOf(place);
  const others = problem.pits.filter((pit) => pit.place !== place).map((pit) => problem.walkS[problem.places.indexOf(pit.place)]![to]!);
  return others.length === 0 ? 0 : Math.min(...others);
}

/** Seconds somebody is there for work: on shift, not absent, breaks spread over their windows. */
function thereS(person: RoundPerson, from: number, until: number): number {
  const onShiftS = overlapS(from, until, person.startsAt, person.endsAt);
  const absentS = (person.absent ?? []).reduce((sum, absence) => sum + overlapS(Math.max(from, person.startsAt), Math.min(until, person.endsAt), absence.from, absence.until), 0);
  const restS = person.breaks.reduce((sum, rest) => {
    if (rest.startedAt !== undefined) return sum + overlapS(from, until, rest.startedAt, rest.startedAt + rest.lengthS);
    const windowUntil = rest.latestAt + rest.lengthS;
    return windowUntil > rest.earliestAt ? sum + (rest.lengthS * overlapS(from, until, rest.earliestAt, windowUntil)) / (windowUntil - rest.earliestAt) : sum;
  }, 0);
  return Math.max(0, onShiftS - absentS - restS);
}
