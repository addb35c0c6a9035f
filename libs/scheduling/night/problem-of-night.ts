import { later, type EpochS } from '@stokehold/domain/quantity';
import { absences, breakOver, walkTableS, type BurningPit, type PersonOnShift } from '@stokehold/domain/shift';
import type { RoundPerson, RoundPit, RoundProblem, RoundTask } from '../rounds/index.js';
import type { FireWindow, NightFacts, NightTask } from './facts.js';
import { frozenOf, promisesOf } from './frozen.js';
import { pinsOf } from './pins-of.js';
import { CHECK_S, TASK_SKILL, UNPLEASANT, USUAL_GAP } from './practice.js';

/** The place of the wood stack; each pit's place has the pit's id. */
export const WOOD_PLACE = 'wood';

const latest = (...times: readonly EpochS[]): EpochS => times.reduce((one, other) => (other > one ? other : one));

/**
 * The night as a problem of rounds, from now until the shift ends: who is there, which fires want a look and when, what else is
 * to do, how far it is to walk, and what is under way already.
 *
 * @param facts  all that is known of the running night; its shift has not ended by `now`
 * @returns a problem that validateRounds accepts. Held to libs/scheduling/night/problem-of-night.test.ts
 */
export function problemOfNight(facts: NightFacts): RoundProblem {
  const { now, shift, pits } = facts;
  const open = openTasks(facts);
  const outline = {
    from: now,
    until: shift.until,
    places: [WOOD_PLACE, ...pits.map(({ id }) => id)],
    walkS: walkTableS([facts.woodPlace, ...pits], facts.walkSpeedMPerS),
    people: shift.people.filter(({ endsAt }) => endsAt > now).map((person) => roundPerson(person, facts)),
    pits: shift.pits.filter(({ pitId }) => pits.some(({ id }) => id === pitId)).map((pit) => roundPit(pit, facts)),
    tasks: open.map(roundTask),
  };
  const frozen = frozenOf(outline, facts);
  const known = { ...outline, frozen, promises: promisesOf(outline, facts, frozen) };
  return { ...known, pins: pinsOf(known, facts, frozen) };
}

/** What is still to do tonight; a pit at whose new fire somebody has looked needs no lighting. */
function openTasks({ shift, tasks, looks }: NightFacts): readonly NightTask[] {
  const isLit = ({ kind, pitId, earliestAt }: NightTask) => kind === 'light' && looks.some((look) => look.pitId === pitId && look.seenAt >= earliestAt);
  return tasks.filter(
    (task) => task.doneAt === null && (task.shiftId === null || task.shiftId === shift.id) && task.dueAt < shift.until && !isLit(task),
  );
}

const roundTask = ({ id, kind, pitId, earliestAt, dueAt, latestAt, lengthS, people }: NightTask): RoundTask => ({
  id, kind, place: pitId ?? WOOD_PLACE, lengthS, earliestAt, dueAt, latestAt, people, skill: TASK_SKILL[kind], unpleasant: UNPLEASANT.includes(kind),
});

/** Somebody who went away while on a break is away. */
function roundPerson(person: PersonOnShift, { now, looks, tasks, carried }: NightFacts): RoundPerson {
  const { id, startsAt, endsAt, skills } = person;
  const seen = looks.filter(({ personId }) => personId === id);
  const done = tasks.filter(({ doneAt, doneBy }) => doneAt !== null && doneBy === id);
  const unpleasantS = done.filter(({ kind }) => UNPLEASANT.includes(kind)).reduce((sum, { lengthS }) => sum + lengthS, 0);
  const absent = absences(person).filter(({ until }) => until > now);
  const isAway = absent.some(({ from }) => from <= now);
  return {
    id, startsAt, endsAt, skills,
    atPlace: lastPlace(seen, done),
    freeFrom: latest(now, startsAt),
    absent,
    breaks: person.breaks.filter((rest) => !breakOver(rest, now) && !(isAway && rest.beganAt !== undefined)).map(({ beganAt, ...rest }) => ({
      id: rest.id, lengthS: rest.lengthS, earliestAt: rest.earliestAt, latestAt: rest.latestAt, ...(beganAt !== undefined && { startedAt: beganAt }),
    })),
    workedS: seen.length * CHECK_S + done.reduce((sum, { lengthS }) => sum + lengthS, 0) + (carried?.get(id)?.workedS ?? 0),
    unpleasantS: unpleasantS + (carried?.get(id)?.unpleasantS ?? 0),
  };
}

/** Where somebody was last seen at work; before that, at the wood. */
function lastPlace(seen: NightFacts['looks'], done: readonly NightTask[]): string {
  const look = seen.at(-1);
  const task = [...done].sort((one, other) => (one.doneAt ?? 0) - (other.doneAt ?? 0)).at(-1);
  if (task && task.doneAt !== null && (!look || task.doneAt > look.seenAt)) return task.pitId ?? WOOD_PLACE;
  return look?.pitId ?? WOOD_PLACE;
}

function roundPit(pit: BurningPit, facts: NightFacts): RoundPit {
  const { pitId } = pit;
  const fire = isToBeLit(pitId, facts) ? undefined : facts.fires.find((one) => one.pitId === pitId);
  const looks = facts.looks.filter((look) => look.pitId === pitId);
  const last = looks.at(-1)?.seenAt;
  const gap = fire?.gap ?? USUAL_GAP;
  return {
    id: pitId, place: pitId, weight: 1, firstNth: looks.length + 1, checkS: CHECK_S, skill: 'fire', gap,
    first: fire ? inOrder(fire) : firstLook(pit, facts),
    ...(last !== undefined && { lastCheckAt: last }),
  };
}

/** Its light-up time is still to come and nobody has looked: what is believed of it is last night's fire. */
const isToBeLit = (pitId: BurningPit['pitId'], facts: NightFacts) =>
  openTasks(facts).some((task) => task.kind === 'light' && task.pitId === pitId && task.dueAt > facts.now);

const inOrder = ({ earliestAt, dueAt, latestSafeAt }: FireWindow): RoundPit['first'] => ({
  earliestAt: earliestAt < dueAt ? earliestAt : dueAt, dueAt, latestSafeAt: latest(dueAt, latestSafeAt),
});

/** The first look at a fire of which nothing is known yet: a gap after it is lit; if it should have been lit long ago, now. */
function firstLook({ pitId, lightAt }: BurningPit, { now, tasks, shift }: NightFacts): RoundPit['first'] {
  const light = tasks.filter((task) => task.kind === 'light' && task.pitId === pitId && (task.shiftId === null || task.shiftId === shift.id)).at(-1);
  if (!light) {
    const due = latest(now, lightAt);
    return { earliestAt: due, dueAt: due, latestSafeAt: later(due, USUAL_GAP.latestSafeS - USUAL_GAP.dueS) };
  }
  const lit = light.doneAt ?? later(latest(now, light.dueAt), light.lengthS);
  return { earliestAt: later(lit, USUAL_GAP.earliestS), dueAt: later(lit, USUAL_GAP.dueS), latestSafeAt: later(lit, USUAL_GAP.latestSafeS) };
}
