import { expect, it } from 'vitest';
import { epochS, later, randomStream, type EpochS, type PersonId, type PitId, type RandomStream, type ShiftId, type TaskId } from '@stokehold/domain/quantity';
import { breakReported, reported, type PersonOnShift } from '@stokehold/domain/shift';
import { withinMs } from '../search/index.js';
import type { Look, NightFacts, NightTask, Shown } from './facts.js';
import { planNight, planShown, shownOf } from './plan-night.js';
import { problemOfNight } from './problem-of-night.js';

const START = epochS(1_800_000_000);
const QUICK = { seed: 1, iterations: 0 };
/** Few: the walk is long, and what is held here are the rules, not how good a plan is. */
const ITERATIONS = 8;
const KINDS = ['light', 'load', 'turn', 'wrap', 'probe', 'unload', 'haul', 'clear-ash'] as const;

function randomPerson(random: RandomStream, nth: number, until: EpochS): PersonOnShift {
  const startsAt = later(START, random.below(4) * 1800);
  const endsAt = later(until, -random.below(4) * 1800);
  const third = Math.floor((endsAt - startsAt) / 3);
  const breaks = [0, 1].map((n) => ({
    id: `break-${nth}-${n}`, lengthS: [600, 1800][n] ?? 600, earliestAt: later(startsAt, third * n + 600), latestAt: later(startsAt, third * (n + 1)),
  }));
  const skills = ['fire', 'food', 'lifting'].filter(() => random.next() < 0.8);
  return { id: `person-${nth}` as PersonId, name: `P${nth}`, skills, startsAt, endsAt, breaks, presence: 'here', wasAway: [] };
}

function randomTask(random: RandomStream, nth: number, pits: NightFacts['pits'], hours: number): NightTask {
  const earliestAt = later(START, random.below(hours * 3600));
  const dueAt = later(earliestAt, random.below(1800));
  const kind = KINDS[random.below(KINDS.length)] ?? 'haul';
  return {
    id: `task-${nth}` as TaskId, shiftId: 'night' as ShiftId, kind, pitId: kind === 'haul' ? null : (pits[random.below(pits.length)]?.id ?? null), earliestAt, dueAt,
    latestAt: later(dueAt, random.below(3600)), lengthS: 60 * (2 + random.below(20)), people: random.next() < 0.25 ? 2 : 1, doneAt: null, doneBy: null,
  };
}

function randomNight(random: RandomStream): NightFacts {
  const hours = [11, 12, 13][random.below(3)] ?? 12;
  const until = later(START, hours * 3600);
  const pits = Array.from({ length: random.below(8) }, (_, n) => ({ id: `pit-${n}` as PitId, xM: random.below(40), yM: random.below(20) }));
  return {
    now: START, woodPlace: { xM: 20, yM: 20 }, walkSpeedMPerS: 1.2, pits, fires: [], looks: [], shown: [],
    tasks: Array.from({ length: random.below(12) }, (_, n) => randomTask(random, n, pits, hours)),
    shift: {
      id: 'night' as ShiftId, from: START, until, people: Array.from({ length: random.below(6) }, (_, n) => randomPerson(random, n, until)),
      pits: pits.map(({ id }) => ({ pitId: id, band: { lowC: 118, highC: 124 }, lightAt: later(START, random.below(7200)) })),
    },
  };
}

/** What may have happened by `now`: checks made early, late or by others, tasks done, people late, away and on break, fires that changed. */
function somethingHappens(random: RandomStream, facts: NightFacts, now: EpochS): NightFacts {
  const past = facts.shown.filter(({ startsAt }) => startsAt < now && random.next() < 0.8);
  const looks: Look[] = past.flatMap(({ work, personIds, startsAt }) =>
    work.kind === 'check' ? [{ pitId: work.pitId, personId: personIds[0] ?? null, seenAt: later(startsAt, random.below(Math.max(1, now - startsAt))) }] : [],
  );
  const allLooks = [...facts.looks, ...looks].sort((one, other) => one.seenAt - other.seenAt);
  const tasks = facts.tasks.map((task) => {
    const shown = past.find(({ work }) => work.kind === 'task' && work.taskId === task.id);
    return shown && task.doneAt === null ? { ...task, doneAt: shown.startsAt, doneBy: shown.personIds[0] ?? null } : task;
  });
  const people = facts.shift.people.map((person) => {
    const chance = random.next();
    const presence = chance < 0.06 ? 'away' : chance < 0.1 ? 'late' : chance < 0.2 ? 'here' : undefined;
    const heard = presence ? reported(person, { state: presence, at: now, ...(random.next() < 0.7 && { until: later(now, random.below(7200)) }) }) : person;
    const breaks = heard.breaks.map((rest) => {
      const shown = past.find(({ work }) => work.kind === 'break' && work.breakId === rest.id);
      const begun = shown && rest.beganAt === undefined ? breakReported(rest, 'begun', shown.startsAt) : rest;
      return begun.beganAt !== undefined && random.next() < 0.3 ? breakReported(begun, 'ended', now) : begun;
    });
    return { ...person, ...heard, breaks };
  });
  const lit = facts.shift.pits.filter(({ pitId, lightAt }) => lightAt < now && (random.next() < 0.9 || allLooks.some((look) => look.pitId === pitId)));
  const fires = lit.map(({ pitId }) => {
    const last = allLooks.filter((look) => look.pitId === pitId).at(-1)?.seenAt ?? now;
    const dueAt = later(last, 1200 + random.below(1500));
    return { pitId, earliestAt: later(dueAt, -random.below(1200)), dueAt, latestSafeAt: later(dueAt, random.below(1200)) };
  });
  return { ...facts, now, looks: allLooks, tasks, fires, shift: { ...facts.shift, people } };
}

it.each([1, 2, 3, 6])('every plan and every repair of random nights passes the independent checker (seed %d)', (seed) => {
  const random = randomStream(seed);
  for (let night = 0; night < 5; night++) {
    let facts = randomNight(random);
    while (facts.now < facts.shift.until) {
      const before = facts.shown.length > 0 ? planShown(facts.shown) : undefined;
      const planned = planNight({ problem: problemOfNight(facts), before, seed: night, iterations: ITERATIONS });
      if (!planned.ok) throw new Error(`night ${night} at ${facts.now - START} s: ${planned.faults.slice(0, 5).join('; ')}`);
      const { assignments, unplaced } = planned.plan;
      expect(facts.shift.people.length > 0 || assignments.length === 0).toBe(true);
      expect(unplaced.every(({ reason }) => reason.code.length > 0)).toBe(true);
      const shown: readonly Shown[] = shownOf(planned.plan);
      facts = somethingHappens(random, { ...facts, shown }, later(facts.now, 60 + random.below(4800)));
    }
  }
}, 60_000);

it('the same facts give the same plan', () => {
  const facts = randomNight(randomStream(40));
  const wanted = { seed: 3, iterations: 200 };
  expect(planNight({ problem: problemOfNight(facts), ...wanted })).toEqual(planNight({ problem: problemOfNight(structuredClone(facts)), ...wanted }));
});

it('a night without people gets a plan that says what nobody does, and one without pits an empty one', () => {
  const facts = { ...randomNight(randomStream(5)), tasks: [] };
  const pit = { id: 'pit' as PitId, xM: 1, yM: 1 };
  const burning = { pitId: pit.id, band: { lowC: 118, highC: 124 }, lightAt: START };
  const nobody = planNight({ problem: problemOfNight({ ...facts, pits: [pit], shift: { ...facts.shift, people: [], pits: [burning] } }), ...QUICK });
  expect(nobody).toMatchObject({ ok: true, plan: { assignments: [] } });
  expect(nobody.ok && nobody.plan.unplaced[0]).toMatchObject({ work: { kind: 'check', pitId: 'pit' }, reason: { code: 'nobody-on-shift' } });
  expect(nobody.ok && nobody.load.some(({ fails, missingPeople }) => fails && missingPeople === 1)).toBe(true);
  expect(planNight({ problem: problemOfNight({ ...facts, pits: [], shift: { ...facts.shift, people: [], pits: [] } }), ...QUICK })).toMatchObject({ ok: true, plan: { assignments: [], unplaced: [] } });
});

it('however long a search may take, the guard ends it with a whole plan and the record of how far it came', () => {
  let lookedAtMs = 0;
  // A clock that goes on by a second each time it is looked at.
  const stop = withinMs(() => (lookedAtMs += 1000), 30_000);
  const planned = planNight({ problem: problemOfNight(randomNight(randomStream(40))), seed: 3, iterations: 1e9, stop });
  if (!planned.ok) throw new Error(planned.faults.join());
  expect(planned.search.endedBy).toBe('stop');
  expect(planned.search.iterations).toBeGreaterThan(0);
  expect(planned.search.iterations).toBeLessThanOrEqual(31 * 16);
});

it('a problem that is none gives faults and no plan', () => {
  const problem = problemOfNight(randomNight(randomStream(9)));
  expect(planNight({ problem: { ...problem, until: problem.from }, ...QUICK })).toEqual({ ok: false, faults: [expect.stringContaining('horizon-empty')] });
});
