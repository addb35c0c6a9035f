import { later, type PersonId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { checkRounds, dispatchRounds, workKey, type Assignment, type RoundPlan, type RoundProblem } from './index.js';
import { handBreak, handNight, handPerson, handPit, handTask, minute } from './hand-night.js';

const ana = 'ana' as PersonId;
const ben = 'ben' as PersonId;
const problem: RoundProblem = handNight({
  places: ['yard', 'stack'],
  walkS: [[0, 120], [120, 0]],
  people: [handPerson('ana', { skills: ['cook'], breaks: [handBreak('ana-rest', 60, 120)], absent: [{ from: minute(200), until: minute(220) }] }), handPerson('ben')],
  pits: [handPit('pit-1', 10), handPit('pit-2', 20)],
  tasks: [handTask('wrap-1', 100, 10, { earliest: 80, skill: 'cook' }), handTask('haul-1', 40, 10, { earliest: 30, place: 'stack' }), handTask('load-1', 150, 10, { earliest: 130, people: 2 })],
  frozen: [{ work: { kind: 'check', pitId: 'pit-1' as never, nth: 1 }, personIds: [ben], startsAt: minute(2), endsAt: minute(7) }],
  pins: [{ work: { kind: 'task', taskId: 'haul-1' as never }, personIds: [ben] }],
});
const good = dispatchRounds(problem);

/** The plan with one assignment changed. */
const alter = (key: string, change: (one: Assignment) => Partial<Assignment>): RoundPlan => ({
  ...good,
  assignments: good.assignments.map((one) => (workKey(one.work) === key ? { ...one, ...change(one) } : one)),
});
const codes = (plan: RoundPlan, of = problem) => new Set(checkRounds(of, plan).map(({ code }) => code));
const shift = (one: Assignment, startsAt: Assignment['startsAt']) => ({ startsAt, endsAt: later(startsAt, one.endsAt - one.startsAt) });

describe('the checker of rounds', () => {
  it('finds nothing in a plan made by dispatch', () => {
    expect(checkRounds(problem, good)).toEqual([]);
    expect(good.unplaced).toEqual([]);
  });

  it.each<{ rule: string; bites: string; plan: () => RoundPlan }>([
    { rule: '1 cover', bites: 'work-missing', plan: () => ({ ...good, assignments: good.assignments.filter(({ work }) => workKey(work) !== 'task/wrap-1') }) },
    { rule: '1 cover', bites: 'work-twice', plan: () => ({ ...good, assignments: [...good.assignments, good.assignments.at(-1)!] }) },
    { rule: '1 cover', bites: 'unknown-work', plan: () => alter('task/wrap-1', () => ({ work: { kind: 'task', taskId: 'nobody-knows' as never } })) },
    { rule: '1 people', bites: 'wrong-number-of-people', plan: () => alter('task/load-1', () => ({ personIds: [ana] })) },
    { rule: '1 people', bites: 'unknown-person', plan: () => alter('task/load-1', () => ({ personIds: [ana, 'cleo' as PersonId] })) },
    { rule: '1 length', bites: 'wrong-length', plan: () => alter('task/wrap-1', (one) => ({ endsAt: later(one.endsAt, 60) })) },
    { rule: '1 reasons', bites: 'unplaced-without-reason', plan: () => ({ ...good, unplaced: [{ work: { kind: 'check', pitId: 'pit-1' as never, nth: 99 }, reason: {} as never }] }) },
    { rule: '2 one thing at a time', bites: 'two-things-at-once', plan: () => alter('check/pit-2/1', () => ({ personIds: [ben], startsAt: minute(4), endsAt: minute(9) })) },
    { rule: '2 walking', bites: 'cannot-walk-there', plan: () => {
      const haul = good.assignments.find(({ work }) => workKey(work) === 'task/haul-1')!;
      const next = good.assignments.find(({ personIds, startsAt }) => personIds.includes(ben) && startsAt > haul.startsAt)!;
      return alter(workKey(next.work), (one) => shift(one, later(haul.endsAt, 30)));
    } },
    { rule: '3 shift', bites: 'outside-shift', plan: () => alter('task/load-1', (one) => shift(one, minute(236))) },
    { rule: '3 absence', bites: 'absent', plan: () => alter('task/wrap-1', (one) => shift(one, minute(205))) },
    { rule: '4 breaks', bites: 'break-outside-window', plan: () => alter('break/ana-rest', (one) => shift(one, minute(122))) },
    { rule: '4 breaks', bites: 'break-outside-window', plan: () => alter('break/ana-rest', (one) => shift(one, minute(58))) },
    { rule: '4 breaks', bites: 'break-owner', plan: () => alter('break/ana-rest', () => ({ personIds: [ben] })) },
    { rule: '4 breaks', bites: 'two-things-at-once', plan: () => {
      const rest = good.assignments.find(({ work }) => workKey(work) === 'break/ana-rest')!;
      return alter('task/wrap-1', (one) => shift(one, later(rest.startsAt, 600)));
    } },
    { rule: '5 skills', bites: 'skill', plan: () => alter('task/wrap-1', () => ({ personIds: [ben] })) },
    { rule: '5 pins', bites: 'pin', plan: () => alter('task/haul-1', () => ({ personIds: [ana] })) },
    { rule: '5 facts', bites: 'frozen-changed', plan: () => alter('check/pit-1/1', (one) => shift(one, minute(3))) },
    { rule: '5 facts', bites: 'frozen-changed', plan: () => alter('check/pit-1/1', () => ({ personIds: [ana] })) },
    { rule: '5 window', bites: 'before-earliest', plan: () => alter('task/wrap-1', (one) => shift(one, minute(79))) },
    { rule: '6 two together', bites: 'wrong-number-of-people', plan: () => alter('task/load-1', () => ({ personIds: [ana, ana] })) },
    { rule: '7 chain', bites: 'checks-out-of-order', plan: () => {
      const [a, b] = ['check/pit-2/1', 'check/pit-2/2'].map((key) => good.assignments.find(({ work }) => workKey(work) === key)!);
      return { ...good, assignments: good.assignments.map((one) => (one === a ? { ...one, work: b!.work } : one === b ? { ...one, work: a!.work } : one)) };
    } },
    { rule: '7 chain', bites: 'checks-overlap', plan: () => {
      const before = good.assignments.find(({ work }) => workKey(work) === 'check/pit-2/1')!;
      return alter('check/pit-2/2', (one) => shift(one, later(before.endsAt, -60)));
    } },
    { rule: '7 lateness', bites: 'wrong-window', plan: () => alter('check/pit-2/2', (one) => ({ dueAt: later(one.dueAt!, 60) })) },
    { rule: '8 latest safe', bites: 'wrong-window', plan: () => alter('check/pit-2/2', (one) => ({ latestSafeAt: later(one.latestSafeAt!, 60) })) },
    { rule: '8 tail', bites: 'check-missing', plan: () => {
      const last = good.assignments.filter(({ work }) => work.kind === 'check' && work.pitId === 'pit-2').at(-1)!;
      return { ...good, assignments: good.assignments.filter((one) => one !== last) };
    } },
    { rule: '9 levels', bites: 'wrong-level', plan: () => ({ ...good, levels: { ...good.levels, walkS: good.levels.walkS - 1 } }) },
    { rule: '9 bound', bites: 'below-bound', plan: () => ({ ...good, bound: { ...good.bound, lateWeightedS: good.levels.lateWeightedS + 1 } }) },
  ])('rule $rule: $bites', ({ bites, plan }) => {
    expect(codes(plan())).toContain(bites);
  });

  it('checks each level on its own', () => {
    for (const level of Object.keys(good.levels) as (keyof RoundPlan['levels'])[]) {
      expect(checkRounds(problem, { ...good, levels: { ...good.levels, [level]: good.levels[level] + 1 } })).toEqual([{ code: 'wrong-level', where: level }]);
    }
  });
});
