import { later, type PersonId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { afterIterations, whileWaited } from '../search/index.js';
import { handNight, handPerson, handPit, handTask, minute } from './hand-night.js';
import { checkRounds, dispatchRounds, generatedNight, planRounds, promisesOf, repairRounds, worthRepair, type RoundPlan, type RoundProblem } from './index.js';

const options = { seed: 1, stop: afterIterations(200) };
const ben = 'ben' as PersonId;
const problem: RoundProblem = handNight({
  people: [handPerson('ana'), handPerson('ben')],
  pits: [handPit('pit-1', 10), handPit('pit-2', 20), handPit('pit-3', 28)],
  tasks: [handTask('haul-1', 60, 10, { earliest: 40, latest: 110 })],
});
const before = planRounds(problem, options).plan;
const judged = (now: RoundProblem, plan: RoundPlan) => checkRounds({ ...now, promises: promisesOf(before, now.from) }, plan);

describe('a repair', () => {
  it('changes nothing when nothing happened', () => {
    expect(worthRepair(problem, before)).toEqual({ worth: false, because: 'same-night' });
    expect(repairRounds(problem, before, options).changes).toEqual([]);
  });

  it('gives away what an absent person had promised, and says so', () => {
    const now = { ...problem, people: problem.people.map((person) => (person.id === ben ? { ...person, absent: [{ from: minute(0), until: minute(240) }] } : person)) };
    const orphaned = before.assignments.filter(({ personIds }) => personIds.includes(ben));
    expect(orphaned.length).toBeGreaterThan(0);
    expect(worthRepair(now, before).worth).toBe(true);
    const repair = repairRounds(now, before, options);
    expect(judged(now, repair.plan)).toEqual([]);
    expect(repair.plan.levels.unsafeS).toBe(0);
    expect(repair.plan.assignments.every(({ personIds }) => !personIds.includes(ben))).toBe(true);
    const theirs = repair.changes.filter(({ personsBefore }) => personsBefore.includes(ben));
    expect(theirs.length).toBe(orphaned.length);
    expect(theirs.every(({ code, because }) => because.code === (code === 'gone' ? 'not-needed' : 'person-not-there'))).toBe(true);
  });

  it('moves the work behind a job that ran over, and names it', () => {
    const first = before.assignments[0]!;
    const overrunUntil = later(first.endsAt, 20 * 60);
    const now = { ...problem, frozen: [{ work: first.work, personIds: first.personIds, startsAt: first.startsAt, endsAt: overrunUntil }] };
    const next = before.assignments.find((one) => one.personIds[0] === first.personIds[0] && one.startsAt >= first.endsAt && one.startsAt < overrunUntil);
    const repair = repairRounds(now, before, options);
    expect(judged(now, repair.plan)).toEqual([]);
    expect(repair.plan.levels.unsafeS).toBe(0);
    if (next) expect(repair.changes.some(({ because }) => because.code === 'work-before-ran-over')).toBe(true);
    expect(repair.changes.length).toBeLessThanOrEqual(6);
  });

  it('finds a place for new work and lists it as new', () => {
    const now = { ...problem, tasks: [...problem.tasks, handTask('wrap-9', 100, 10, { earliest: 80, latest: 140 })] };
    // There is room for it: nothing that was planned has to move, and nothing to be searched for.
    expect(worthRepair(now, before)).toEqual({ worth: false, because: 'same-night' });
    const { plan, changes } = repairRounds(now, before, options);
    expect(judged(now, plan)).toEqual([]);
    expect(plan.unplaced).toEqual([]);
    expect(changes.find(({ work }) => work.kind === 'task' && work.taskId === 'wrap-9')).toMatchObject({ code: 'new', because: { code: 'new-work' } });
  });

  it('answers a fire that burns faster', () => {
    const sooner = handPit('pit-3', 16);
    const now = { ...problem, pits: [...problem.pits.slice(0, 2), sooner] };
    const { plan, changes } = repairRounds(now, before, options);
    expect(judged(now, plan)).toEqual([]);
    // Left alone it would be 12 minutes late; moving it costs one promise near now, 150 weighted seconds at the usual price.
    expect(plan.levels.lateWeightedS).toBeLessThan(12 * 60);
    expect(plan.levels.unsafeS).toBe(0);
    expect(changes.some(({ work, because }) => work.kind === 'check' && work.pitId === 'pit-3' && because.code === 'due-moved')).toBe(true);
  });

  it('that somebody waits for ends at once where nothing is to mend', () => {
    expect(before.levels.lateWeightedS).toBe(before.bound.lateWeightedS);
    expect(repairRounds(problem, before, { seed: 1, stop: whileWaited(200, 6000) })).toMatchObject({ iterations: 0, changes: [] });
  });

  it.each([3, 8, 12, 17])('that somebody waits for is searched on while a fire is unsafe, and no longer (night %d)', (seed) => {
    const night = generatedNight({ pits: 10, people: 4, seed, hours: 6 });
    const { plan } = planRounds(night, { seed, stop: afterIterations(300) });
    const now = { ...night, people: night.people.map((person, nth) => (nth === 0 ? { ...person, absent: [{ from: later(night.from, 3600), until: person.endsAt }] } : person)) };
    const short = repairRounds(now, plan, { seed, stop: afterIterations(20) });
    expect(short.plan.levels.unsafeS).toBeGreaterThan(short.plan.bound.unsafeS);
    const waited = repairRounds(now, plan, { seed, stop: whileWaited(20, 6000) });
    expect(waited.plan.levels.unsafeS).toBe(0);
    expect(waited.iterations).toBeGreaterThan(20);
    expect(waited.iterations).toBeLessThan(6000);
    expect(checkRounds({ ...now, promises: promisesOf(plan, now.from) }, waited.plan)).toEqual([]);
    // Found again by the iterations it reports, until which it was no shorter.
    expect(repairRounds(now, plan, { seed, stop: whileWaited(20, waited.iterations) }).planHash).toBe(waited.planHash);
  });

  it('of a night that nobody can hold ends after its last iteration', () => {
    const alone = { ...problem, people: [problem.people[0]!], pits: Array.from({ length: 12 }, (_, nth) => handPit(`pit-${nth}`, 10)) };
    const repair = repairRounds(alone, planRounds(alone, options).plan, { seed: 1, stop: whileWaited(10, 40) });
    expect(repair.plan.levels.unsafeS).toBeGreaterThan(0);
    expect(repair.iterations).toBe(40);
  });

  it('is not worth it for a due that moves by a minute', () => {
    const now = { ...problem, pits: [handPit('pit-1', 11), ...problem.pits.slice(1)] };
    expect(worthRepair(now, before).worth).toBe(false);
  });

  it('never moves frozen work, whatever happens around it', () => {
    const frozen = dispatchRounds(problem).assignments.slice(0, 2).map(({ work, personIds, startsAt, endsAt }) => ({ work, personIds, startsAt, endsAt }));
    const { plan } = repairRounds({ ...problem, frozen, people: [problem.people[0]!, { ...problem.people[1]!, endsAt: minute(120) }] }, before, options);
    for (const fact of frozen) expect(plan.assignments).toContainEqual(expect.objectContaining(fact));
  });
});
