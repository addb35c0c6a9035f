import type { PersonId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { handBreak, handNight, handPerson, handPit, handTask, minute } from './hand-night.js';
import { checkRounds, dispatchRounds, generatedNight, loadOf, roundsOf, workKey } from './index.js';

const starts = (plan: ReturnType<typeof dispatchRounds>, key: string) => plan.assignments.find(({ work }) => workKey(work) === key)?.startsAt;

describe('dispatch', () => {
  it('goes at once to a check that is past due', () => {
    const problem = handNight({ people: [handPerson('ana')], pits: [handPit('pit-1', -8), handPit('pit-2', 25)] });
    const plan = dispatchRounds(problem);
    // Due 8 min ago: it begins at minute 0, 480 s late.
    expect(starts(plan, 'check/pit-1/1')).toBe(minute(0));
    expect(plan.assignments[0]).toMatchObject({ lateS: 480, pastLatestS: 0 });
    expect(checkRounds(problem, plan)).toEqual([]);
  });

  it('keeps the fire until the end of the night with as few checks as the gap allows', () => {
    // First due at 30, gap 30, until 240: wanted gap 0.87 x 30 = 26.1; the first target is 30 - 3.9 = 26.1 min,
    // 213.9 min remain, ceil(213.9 / 26.1) = 9 gaps, so 9 checks.
    const plan = dispatchRounds(handNight({ people: [handPerson('ana')], pits: [handPit('pit-1', 30)] }));
    expect(plan.assignments.filter(({ work }) => work.kind === 'check')).toHaveLength(9);
    expect(plan.levels).toMatchObject({ unsafeS: 0, lateWeightedS: 0, unplaced: 0 });
  });

  it('walks before it works', () => {
    const problem = handNight({ places: ['yard', 'far'], walkS: [[0, 300], [300, 0]], people: [handPerson('ana')], pits: [handPit('pit-1', 2, { place: 'far' })] });
    const plan = dispatchRounds(problem);
    // 5 min of walking to a check due in 2: 3 min late, and the bound knows it.
    expect(starts(plan, 'check/pit-1/1')).toBe(minute(5));
    expect(plan.bound.lateWeightedS).toBe(180);
  });

  it('gives everybody their break, whole and in its window, and calls nobody out of it', () => {
    const breaks = [handBreak('ana-rest', 60, 90)];
    const problem = handNight({ people: [handPerson('ana', { breaks })], pits: [handPit('pit-1', 10), handPit('pit-2', 20)] });
    // Two checks of 5 min and the break of 30 fit into 42 min from check to check; three would not.
    const plan = dispatchRounds(problem);
    const rest = plan.assignments.find(({ work }) => work.kind === 'break')!;
    expect(rest.startsAt).toBeGreaterThanOrEqual(minute(60));
    expect(rest.startsAt).toBeLessThanOrEqual(minute(90));
    expect(plan.assignments.filter((one) => one !== rest && one.startsAt < rest.endsAt && rest.startsAt < one.endsAt)).toEqual([]);
    expect(checkRounds(problem, plan)).toEqual([]);
  });

  it('starts a task for two with both in the same second', () => {
    const plan = dispatchRounds(handNight({ people: [handPerson('ana'), handPerson('ben')], tasks: [handTask('load-1', 30, 10, { people: 2 })] }));
    expect(plan.assignments).toMatchObject([{ personIds: ['ana', 'ben'], startsAt: minute(0) }]);
  });

  it('says who hinders a task that nobody can do, and what would help', () => {
    const plan = dispatchRounds(handNight({ people: [handPerson('ana')], tasks: [handTask('wrap-1', 30, 10, { skill: 'cook' })] }));
    expect(plan.unplaced).toMatchObject([{ reason: { code: 'nobody-with-skill', hindrances: [{ personId: 'ana', code: 'skill' }], relax: { code: 'teach-skill', skill: 'cook' } } }]);
  });

  it('plans a night without people as a list of what is not done, and a night without pits as nothing', () => {
    const problem = handNight({ pits: [handPit('pit-1', 30)], tasks: [handTask('haul-1', 30, 10)] });
    const plan = dispatchRounds(problem);
    expect(plan.assignments).toEqual([]);
    // Nine checks and the task.
    expect(plan.unplaced).toHaveLength(10);
    expect(plan.unplaced.every(({ reason }) => reason.code === 'nobody-on-shift')).toBe(true);
    // Latest safe 30 + 12 = 42, fire kept to 240: 198 min unsafe.
    expect(plan.levels).toMatchObject({ unsafeS: 198 * 60, unsafeChecks: 1, unplaced: 1 });
    expect(checkRounds(problem, plan)).toEqual([]);
    expect(dispatchRounds(handNight({ people: [handPerson('ana')] })).assignments).toEqual([]);
  });

  it('does not count on somebody who is absent', () => {
    const problem = handNight({ people: [handPerson('ana', { absent: [{ from: minute(0), until: minute(240) }] }), handPerson('ben')], pits: [handPit('pit-1', 10)] });
    const plan = dispatchRounds(problem);
    expect(plan.assignments.every(({ personIds }) => personIds[0] === 'ben')).toBe(true);
    expect(checkRounds(problem, plan)).toEqual([]);
  });

  it('keeps a pin to the minute and to the person', () => {
    const problem = handNight({
      people: [handPerson('ana'), handPerson('ben')], pits: [handPit('pit-1', 10), handPit('pit-2', 20)], tasks: [handTask('haul-1', 30, 10)],
      pins: [{ work: { kind: 'task', taskId: 'haul-1' as never }, personIds: ['ben' as PersonId], startsAt: minute(44) }],
    });
    const plan = dispatchRounds(problem);
    expect(plan.assignments.find(({ work }) => work.kind === 'task')).toMatchObject({ personIds: ['ben'], startsAt: minute(44) });
    expect(checkRounds(problem, plan)).toEqual([]);
  });

  it('makes rounds: runs of work without a wait', () => {
    const problem = handNight({ people: [handPerson('ana')], pits: [handPit('pit-1', 10), handPit('pit-2', 12)] });
    const rounds = roundsOf(dispatchRounds(problem), 'ana' as PersonId);
    expect(rounds[0]?.assignments.map(({ work }) => workKey(work))).toEqual(['check/pit-1/1', 'check/pit-2/1']);
    expect(rounds.length).toBeGreaterThan(5);
  });
});

describe('load before planning', () => {
  it('says which hours fail and how many people are missing', () => {
    // 10 pits, 8 min each 30 min, one place: 160 min an hour for two people with 120.
    const pits = Array.from({ length: 10 }, (_, i) => handPit(`pit-${i}`, 0, { check: 8 }));
    const [hour] = loadOf(handNight({ people: [handPerson('ana'), handPerson('ben')], pits }));
    expect(hour).toMatchObject({ neededS: 9600, presentS: 7200, fails: true, missingPeople: 1 });
    // Latest safe after 42 min: 10 x 8 x 48 / 42 = 91.4 min fit into 120, so a third person mends it; fires need not be banked.
    expect(hour?.mend).toEqual({ code: 'call-people', people: 1 });
  });

  it('sees a skill that leaves with one person', () => {
    const absent = [{ from: minute(60), until: minute(120) }];
    const hours = loadOf(handNight({ people: [handPerson('ana', { skills: ['cook'], absent }), handPerson('ben')], pits: [handPit('pit-1', 0, { skill: 'cook' })] }));
    const failing = hours.filter(({ fails }) => fails);
    expect(failing).toMatchObject([{ skill: 'cook', fromAt: minute(60), presentS: 0, missingPeople: 1 }]);
  });
});

it('a generated night breaks no rule', () => {
  for (const [pits, people] of [[1, 1], [6, 3], [12, 4], [3, 5]] as const) {
    const problem = generatedNight({ pits, people, seed: pits });
    expect(checkRounds(problem, dispatchRounds(problem))).toEqual([]);
  }
}, 60_000);
