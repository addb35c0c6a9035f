import { whatIfView, whyView, type PlanView, type WhatIfView } from '@stokehold/domain/contract';
import { fromIso, later, type PersonId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Deeds } from '../platform/index.js';
import { sameIds, type TestHouse } from '../platform/testing.js';
import { addPit, asking, at, night, on, openPlanningHouse, rest } from './testing.js';

const [ana, bo, cy, bess, nell, ruth, spare, restId] = sameIds(8) as [string, string, string, string, string, string, string, string];
let house: TestHouse;
let ask: ReturnType<typeof asking>;
beforeAll(async () => {
  house = await openPlanningHouse({ Ana: ana, Bo: bo, Cy: cy }, { Bess: bess, Nell: nell, Ruth: ruth });
  await addPit(house, spare, 'Wren', 40);
  await house.database.query(`delete from skill where crew_member_id = $1 and skill = 'fire'`, [cy]);
  ask = asking(house);
  await ask.post('/shifts', night([on(ana, [rest(restId, 4, 6)]), on(bo), on(cy)], [bess, nell, ruth]));
});
afterAll(async () => {
  await house.settle();
  await house.close();
});

const checks = (plan: PlanView) => plan.assignments.filter(({ work }) => work.kind === 'check');
const aCheck = async (nth = 6) => {
  const one = checks(await ask.plan())[nth]!;
  if (one.work.kind !== 'check') throw new Error('no check');
  return { ...one, pitId: one.work.pitId, work: one.work, other: one.people[0] === ana ? bo : ana };
};
const plans = async () => ((await house.database.query('select count(*)::int as n from plan')) as [{ n: number }])[0].n;
/** A change of somebody's skills, told as such. */
const withSkills = async (sql: string, values: readonly string[]) => {
  await house.app.get(Deeds).run(house.yardId, async (deed) => {
    await deed.em.query(sql, [...values]);
    deed.tell({ kind: 'crew-set-up', personId: bo as PersonId });
  });
  await house.settle();
};
const whatIf = async (what: object, status = 201) => {
  const { body } = await request(house.app.getHttpServer()).post('/api/plan/what-if').send({ what }).expect(status);
  return body as WhatIfView & { code: string; values: Record<string, unknown> };
};

describe('why', () => {
  it('this person, who else and at what cost, and who cannot by which rule', async () => {
    const one = await aCheck();
    const answer = whyView.strict().parse(await ask.get('/plan/why', { kind: 'check', id: one.pitId, nth: one.work.nth }));
    expect(answer.assignment).toMatchObject({ people: one.people, startsAt: one.startsAt });
    expect(answer.reason).toMatch(/nearest|evens-load/);
    expect(answer.others.map(({ people }) => people)).toEqual([[one.other]]);
    expect(answer.others[0]?.costs.length).toBeGreaterThan(0);
    expect(answer.hindered).toContainEqual({ personId: cy, code: 'skill', work: null });
    expect(answer.state).toBe('in-time');
  });
  it('a break belongs to its person', async () => {
    expect(await ask.get('/plan/why', { kind: 'break', id: restId })).toMatchObject({ reason: 'own-break', others: [] });
  });
  it('work that is not on the night, and a question that cannot be read, are refused', async () => {
    expect((await ask.get('/plan/why', { kind: 'task', id: randomUUID() }, 404)).code).toBe('work-unknown');
    expect((await ask.get('/plan/why', { kind: 'check', id: 'Bess' }, 400)).code).toBe('input-invalid');
  });
  it('a task that nobody may do says who is hindered by what, and the least that would admit it', async () => {
    const taskId = randomUUID();
    await withSkills('delete from skill where skill = $1', ['lifting']);
    await ask.post('/tasks', { id: taskId, kind: 'haul', pitId: null, earliestAt: at(2), dueAt: at(2.2), latestAt: at(2.5), lengthS: 900, people: 1 });
    const answer = whyView.parse(await ask.get('/plan/why', { kind: 'task', id: taskId }));
    expect(answer).toMatchObject({ state: 'unplaced', assignment: null, reason: null });
    expect(new Set(answer.hindrances.map(({ code }) => code))).toEqual(new Set(['skill']));
    expect(answer.relax).toMatchObject({ code: 'teach-skill', skill: 'lifting' });
    await ask.post(`/tasks/${taskId}/done`, { doneAt: at(0) });
    await withSkills('insert into skill values ($1, $2)', [bo, 'lifting']);
  });
});

describe('what if', () => {
  it('a person less: their work moves, with reasons, and nothing is kept', async () => {
    const [before, kept] = [await ask.plan(), await plans()];
    const answer = whatIfView.strict().parse(await whatIf({ code: 'person-less', personId: bo, fromAt: at(1) }));
    const theirs = answer.changes.filter(({ from }) => from?.people.some((id) => id === bo) && from.startsAt >= at(1));
    expect(theirs.length).toBeGreaterThan(5);
    expect(theirs.every(({ to }) => !to || !to.people.some((id) => id === bo))).toBe(true);
    expect(theirs.some(({ because }) => because.code === 'person-not-there' && because.personId === bo)).toBe(true);
    expect(answer.costs.length).toBeGreaterThan(0);
    expect([await ask.plan(), await plans()]).toEqual([before, kept]);
  });
  it('twenty minutes late, a pit more, a break moved, work given to another', async () => {
    const one = await aCheck();
    const late = whatIfView.parse(await whatIf({ code: 'person-late', personId: ana, byS: 1200 }));
    expect(late.changes.filter(({ to }) => to?.people.some((id) => id === ana) && to.startsAt < at(1 / 3))).toEqual([]);
    const more = whatIfView.parse(await whatIf({ code: 'pit-more', pitId: spare, lightAt: at(1) }));
    expect(more.changes.filter(({ work, code }) => work.kind === 'check' && work.pitId === spare && code === 'new').length).toBeGreaterThan(15);
    const moved = whatIfView.parse(await whatIf({ code: 'break-moved', breakId: restId, startsAt: at(7) }));
    expect(moved.changes.find(({ work }) => work.kind === 'break')?.to?.startsAt).toBe(at(7));
    const given = whatIfView.parse(await whatIf({ code: 'work-given', work: one.work, people: [one.other], startsAt: null }));
    expect(given.changes.find(({ work }) => work.kind === 'check' && work.pitId === one.pitId && work.nth === one.work.nth)?.to?.people).toEqual([one.other]);
  });
  it('what this night does not know, and what is against a rule, is refused by name', async () => {
    expect((await whatIf({ code: 'person-less', personId: randomUUID(), fromAt: at(1) }, 404)).code).toBe('person-unknown');
    expect((await whatIf({ code: 'pit-more', pitId: randomUUID(), lightAt: at(1) }, 404)).code).toBe('pit-unknown');
    expect((await whatIf({ code: 'break-moved', breakId: randomUUID(), startsAt: at(1) }, 404)).code).toBe('break-unknown');
    expect(await whatIf({ code: 'break-moved', breakId: restId, startsAt: at(13) }, 409)).toMatchObject({ code: 'plan-breaks-rule', values: { rule: 'break-window' } });
    const { work } = await aCheck();
    expect(await whatIf({ code: 'work-given', work, people: [cy], startsAt: null }, 409)).toMatchObject({ code: 'plan-breaks-rule', values: { rule: 'skill' } });
    expect((await whatIf({ code: 'meteor' }, 400)).code).toBe('input-invalid');
  });
});

describe('a decision by hand', () => {
  const of = async (work: object) => (await ask.plan()).assignments.find((one) => JSON.stringify(one.work) === JSON.stringify(work))!;

  it('about who does it is kept over every later plan, and can be taken back', async () => {
    const { work, other } = await aCheck();
    await ask.post('/plan/pins', { work, people: [other], startsAt: null });
    expect(await of(work)).toMatchObject({ people: [other], pinned: true });
    expect((await ask.plan()).because.cause).toBe('by-hand');
    await ask.post('/presence', { personId: cy, state: 'away' });
    await ask.post('/presence', { personId: cy, state: 'here' });
    expect(await of(work)).toMatchObject({ people: [other], pinned: true });
    await ask.post('/plan/pins', { work, people: null, startsAt: null });
    expect((await of(work)).pinned).toBe(false);
  });
  it('about when it begins holds to the second', async () => {
    const { work, startsAt, people } = await aCheck();
    const later5 = toIso(later(fromIso(startsAt), 300));
    await ask.post('/plan/pins', { work, people: [...people], startsAt: later5 });
    expect(await of(work)).toMatchObject({ startsAt: later5, people, pinned: true });
    await ask.post('/plan/pins', { work, people: null, startsAt: null });
  });
  it('against a rule is refused with the rule named, and the plan stays', async () => {
    const { work } = await aCheck();
    const before = await ask.plan();
    const no = async (body: object) => ((await ask.post('/plan/pins', { people: null, startsAt: null, work, ...body }, 409)) as { values: { rule: string } }).values.rule;
    expect(await no({ people: [cy] })).toBe('skill');
    expect(await no({ people: [ana, bo] })).toBe('people');
    expect(await no({ people: [ana], startsAt: at(12.5) })).toBe('shift');
    expect(await no({ startsAt: at(-1) })).toBe('earliest');
    expect(await no({ work: { kind: 'break', breakId: restId }, people: [bo] })).toBe('break-owner');
    expect(await no({ startsAt: at(11.5) })).toBe('latest-safe');
    expect(await ask.plan()).toEqual(before);
  });
  it('that falls into work decided already is refused', async () => {
    const [one, other] = [await aCheck(6), await aCheck(9)];
    await ask.post('/plan/pins', { work: one.work, people: one.people, startsAt: one.startsAt });
    const { values } = await ask.post('/plan/pins', { work: other.work, people: one.people, startsAt: toIso(later(fromIso(one.startsAt), 60)) }, 409);
    expect(values.rule).toMatch(/two-things-at-once|latest-safe|no-place|pin|order/);
    await ask.post('/plan/pins', { work: one.work, people: null, startsAt: null });
  });
  it('about work or people that are not on the night is refused', async () => {
    const { work } = await aCheck();
    expect((await ask.post('/plan/pins', { work: { kind: 'task', taskId: randomUUID() }, people: [ana], startsAt: null }, 404)).code).toBe('work-unknown');
    expect((await ask.post('/plan/pins', { work, people: [randomUUID()], startsAt: null }, 404)).code).toBe('person-unknown');
  });
});

it('when no shift runs there is no plan to ask about', async () => {
  const none = await openPlanningHouse({ Ana: ana }, { Bess: bess });
  try {
    const asked = asking(none);
    expect((await asked.get('/plan/why', { kind: 'check', id: bess }, 409)).code).toBe('no-plan');
    expect((await asked.post('/plan/pins', { work: { kind: 'check', pitId: bess, nth: 1 }, people: [ana], startsAt: null }, 409)).code).toBe('no-plan');
  } finally {
    await none.settle();
    await none.close();
  }
});
