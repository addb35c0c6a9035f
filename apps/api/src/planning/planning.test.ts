import { planView, type PlanView } from '@stokehold/domain/contract';
import { fromIso, later, toIso, type EpochS } from '@stokehold/domain/quantity';
import { DateTime } from 'luxon';
import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Deeds, log, Outbox } from '../platform/index.js';
import { sameIds, type TestHouse } from '../platform/testing.js';
import { Improver, PlanningReactions, Plans, SearchBudget } from './index.js';
import { addPit, asking, at, band, EVENING, night as nightOf, on, openPlanningHouse, rest } from './testing.js';

let house: TestHouse;
const [ana, bo, cy, bess, nell, ruth] = sameIds(6) as [string, string, string, string, string, string];

beforeEach(async () => {
  house = await openPlanningHouse({ Ana: ana, Bo: bo, Cy: cy }, { Bess: bess, Nell: nell, Ruth: ruth });
});
afterEach(async () => {
  await house.settle();
  await house.close();
});

const turnTo = (hours: number) => (house.now = later(EVENING, Math.round(hours * 3600)));
const post = (path: string, body: object) => asking(house).post(path, body);
const plan = () => asking(house).plan();
const night = (people: object[], pits: readonly string[] = [bess, nell, ruth]) => nightOf(people, pits);
const of = (view: PlanView, personId: string) => view.assignments.filter(({ people }) => people.some((id) => id === personId));
const checksOf = (view: PlanView, pitId: string) => view.assignments.filter(({ work }) => work.kind === 'check' && work.pitId === pitId);
const count = async (sql: string) => Number(((await house.database.query(`select count(*) as n from ${sql}`)) as { n: string }[])[0]?.n);
const lightAll = async () => {
  for (const { work, startsAt } of (await plan()).assignments.filter((one) => one.work.kind === 'task')) {
    house.now = later(fromIso(startsAt), 600);
    if (work.kind === 'task') await post(`/tasks/${work.taskId}/done`, { doneAt: toIso(house.now) });
  }
};

describe('a planned shift', () => {
  it('has a plan at once: fires are lit, then looked at about every half hour until the end, and everybody has work', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    const made = await plan();
    expect(made.because).toEqual({ cause: 'first', pitId: null, personId: null });
    expect(made.assignments.filter(({ work }) => work.kind === 'task')).toHaveLength(3);
    for (const pitId of [bess, nell, ruth]) {
      const starts = checksOf(made, pitId).map(({ startsAt }) => fromIso(startsAt));
      const gaps = starts.slice(1).map((start, n) => (start - (starts[n] ?? 0)) / 60);
      expect(starts[0]).toBeGreaterThan(fromIso(at(0.5)));
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(18);
      expect(Math.max(...gaps)).toBeLessThanOrEqual(40);
    }
    expect(made.unplaced).toEqual([]);
    expect(of(made, ana).length).toBeGreaterThan(15);
    expect(of(made, bo).length).toBeGreaterThan(15);
    expect(made.evenness).toBeGreaterThan(0.9);
    expect(made.load.filter(({ skill }) => skill === null)).toHaveLength(12);
    expect(made.load.some(({ fails }) => fails)).toBe(false);
    expect(made.lateWeightedS).toBeGreaterThanOrEqual(made.boundWeightedS);
  });

  it('of nobody says that every fire goes unlooked at, and how many people are missing', async () => {
    await post('/shifts', night([]));
    const made = await plan();
    expect(made.assignments).toEqual([]);
    expect(made.unplaced.length).toBeGreaterThan(60);
    expect(new Set(made.unplaced.map(({ reason }) => reason))).toEqual(new Set(['nobody-on-shift']));
    expect(made.load.some(({ fails, missingPeople }) => fails && missingPeople > 0)).toBe(true);
    expect(made.evenness).toBeNull();
  });

  it('without pits has a plan in which nothing is to do but breaks', async () => {
    const restId = randomUUID();
    await post('/shifts', night([on(ana, [rest(restId, 4, 6)])], []));
    expect((await plan()).assignments.map(({ work }) => work)).toEqual([{ kind: 'break', breakId: restId }]);
  });

  it('too long for one person is planned as far as it goes, and says which hours fail', async () => {
    const made = { ...night([on(ana)]), pits: [] as object[] };
    const pits = sameIds(8);
    for (const [nth, id] of pits.entries()) {
      await addPit(house, id, `Pit ${nth}`, 3 * nth);
    }
    await post('/shifts', { ...made, pits: pits.map((pitId) => ({ pitId, band, lightAt: at(0.25) })) });
    const view = await plan();
    expect(view.load.some(({ fails, missingPeople }) => fails && missingPeople >= 1)).toBe(true);
    expect(view.assignments.some(({ pastLatestS }) => pastLatestS > 0) || view.unplaced.length > 0).toBe(true);
    expect(view.lateWeightedS).toBeGreaterThan(0);
  });

  // The time zone database: in America/Chicago the night of 2027-03-13 has an hour less.
  it('of the night the clocks go forward is planned for eleven hours', async () => {
    const wall = (time: string) => toIso(fromIso(DateTime.fromISO(time, { zone: 'America/Chicago' }).toUTC().toISO() ?? ''));
    const [startsAt, endsAt] = [wall('2027-03-13T18:00'), wall('2027-03-14T06:00')];
    house.now = fromIso(startsAt);
    await post('/shifts', { id: randomUUID(), startsAt, endsAt, people: [{ personId: ana, startsAt, endsAt, breaks: [] }], pits: [{ pitId: bess, band, lightAt: startsAt }] });
    const made = await plan();
    const last = made.assignments.at(-1);
    expect(made.load.filter(({ skill }) => skill === null)).toHaveLength(11);
    expect(fromIso(last?.endsAt ?? '')).toBeLessThanOrEqual(fromIso(endsAt));
    expect(fromIso(last?.startsAt ?? '')).toBeGreaterThan(fromIso(endsAt) - 40 * 60);
  });
});

describe('somebody who is not there', () => {
  it('late: their checks go to others or wait for them where they can, and the plan says what changed and why', async () => {
    await post('/shifts', night([on(ana), on(bo), on(cy)]));
    const before = await plan();
    const theirs = of(before, bo).filter(({ startsAt }) => startsAt < at(1.5));
    expect(theirs.length).toBeGreaterThan(0);
    await post('/presence', { personId: bo, state: 'late', until: at(1.5) });
    const after = await plan();
    expect(after.because).toEqual({ cause: 'presence', pitId: null, personId: bo });
    expect(of(after, bo).every(({ startsAt }) => startsAt >= at(1.5))).toBe(true);
    expect(after.unplaced).toEqual([]);
    expect(after.assignments.filter(({ pastLatestS }) => pastLatestS > 0)).toEqual([]);
    const changes = theirs.map(({ work }) => after.changes.find((one) => JSON.stringify(one.work) === JSON.stringify(work)));
    expect(changes.some((change) => /other-person|gone/.test(change?.code ?? ''))).toBe(true);
    for (const change of changes) {
      expect(change?.from?.people).toEqual([bo]);
      expect(!change?.to || !change.to.people.some((id) => id === bo) || change.to.startsAt >= at(1.5)).toBe(true);
    }
  });

  it('away in the middle of a check gives it back at once', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    await lightAll();
    const first = (await plan()).assignments.find(({ work }) => work.kind === 'check');
    house.now = later(fromIso(first!.startsAt), 60);
    await post('/presence', { personId: first!.people[0]!, state: 'away' });
    const after = await plan();
    expect(of(after, first!.people[0]!)).toEqual([]);
    const now = after.assignments.find(({ work }) => JSON.stringify(work) === JSON.stringify(first!.work));
    expect(now?.people).toEqual([first!.people[0] === ana ? bo : ana]);
  });
});

describe('what somebody decided', () => {
  const lookAt = async (pitId: string) => post('/checks', { pitId, seenAt: toIso(house.now), bed: 'fair', left: 'some', raked: true, splits: 1 });

  it('stays listed beside the plans that fires ask for, with its changes and their reasons, for half an hour', async () => {
    await post('/shifts', night([on(ana), on(bo), on(cy)]));
    await lightAll();
    await post('/presence', { personId: bo, state: 'away' });
    const decided = await plan();
    expect(decided.decisions).toEqual([]);
    expect(decided.changes.map(({ because }) => because)).toContainEqual({ code: 'person-not-there', personId: bo, work: null });
    house.now = later(house.now, 300);
    await lookAt(bess);
    const listed = { madeAt: decided.madeAt, listedUntil: toIso(later(fromIso(decided.madeAt), 1800)), because: decided.because, changes: decided.changes };
    expect((await plan()).because).toMatchObject({ cause: 'check', pitId: bess });
    expect((await plan()).decisions).toEqual([listed]);
    house.now = later(house.now, 600);
    await lookAt(nell);
    expect((await plan()).decisions).toEqual([listed]);
    house.now = later(house.now, 1200);
    await lookAt(ruth);
    expect((await plan()).because).toMatchObject({ cause: 'check', pitId: ruth });
    expect((await plan()).decisions).toEqual([]);
  });
});

describe('a better plan', () => {
  const search = (iterations: number) => (house.app.get(SearchBudget).afterwards = iterations);
  const found = async () => {
    await house.app.get(Improver).idle();
    await house.settle();
    return plan();
  };
  const four = sameIds(4);
  const rests = sameIds(2) as [string, string];
  const manyPits = async (people = [on(ana, [rest(rests[0], 4, 6)]), on(bo, [rest(rests[1], 4, 6)]), on(cy)]) => {
    for (const [nth, id] of four.entries()) await addPit(house, id, `Pit ${nth}`, 3 + 7 * nth);
    return night(people, [bess, nell, ruth, ...four]);
  };

  it('is found afterwards, no worse in anything that comes first, and says how it was found', async () => {
    house.app.get(SearchBudget).atOnce = 0;
    search(400);
    const seen: PlanView[] = [];
    house.app.get(Outbox).listen(async (_, __, { kind }) => void (kind === 'plan-repaired' && seen.push(await plan())));
    await post('/shifts', await manyPits([on(ana), on(bo)]));
    const after = await found();
    const first = seen[0]!;
    const pastLatest = ({ assignments }: PlanView) => assignments.filter(({ pastLatestS }) => pastLatestS > 0).length;
    expect(first.search).toMatchObject({ improved: false, iterations: 0 });
    expect(after.search).toMatchObject({ improved: true, iterations: 400, seed: first.search.seed, gapWeightedS: after.lateWeightedS - after.boundWeightedS });
    expect(pastLatest(after)).toBeLessThanOrEqual(pastLatest(first));
    expect(after.assignments).not.toEqual(first.assignments);
    expect(after.because.cause).toBe('first');
  });

  it('keeps what the first one told: why it was made, and what changed of what people saw before', async () => {
    house.app.get(SearchBudget).atOnce = 0;
    await post('/shifts', await manyPits());
    search(400);
    await post('/presence', { personId: bo, state: 'away' });
    const first = await plan();
    const after = await found();
    expect(after.search.improved).toBe(true);
    expect(after.madeAt).toBe(first.madeAt);
    expect(after.because).toEqual({ cause: 'presence', pitId: null, personId: bo });
    const theirs = after.changes.filter(({ from }) => from?.people.some((id) => id === bo));
    expect(theirs.length).toBeGreaterThan(0);
    expect(theirs.map(({ because }) => because)).toContainEqual({ code: 'person-not-there', personId: bo, work: null });
    expect(of(after, bo)).toEqual([]);
  });

  it('is not used when a newer fact came in between', async () => {
    await post('/shifts', await manyPits());
    search(400);
    await post('/presence', { personId: bo, state: 'away', until: at(3) });
    search(0);
    await post('/breaks', { breakId: rests[0], state: 'begun' });
    const after = await found();
    expect(after.because.cause).toBe('break');
    expect(after.search.improved).toBe(false);
  });

  it('is not used when somebody is already on the way to work that it would change', async () => {
    await post('/shifts', await manyPits());
    search(400);
    // Between the search and its end nearly the whole night passes.
    house.app.get(Outbox).listen(async (_yard, _seq, { kind }) => void (kind === 'plan-repaired' && turnTo(11.9)));
    await post('/presence', { personId: bo, state: 'away', until: at(3) });
    await found();
    expect(await count(`plan where (search ->> 'improved')::boolean`)).toBe(0);
  });
});

describe('breaks', () => {
  it('that have begun are not interrupted, and are in the plan where they really began', async () => {
    const breakId = randomUUID();
    await post('/shifts', night([on(ana, [rest(breakId, 2, 4)]), on(bo)]));
    await lightAll();
    turnTo(2.5);
    await post('/breaks', { breakId, state: 'begun' });
    const made = await plan();
    const taken = made.assignments.find(({ work }) => work.kind === 'break');
    expect(taken).toMatchObject({ people: [ana], startsAt: at(2.5), endsAt: at(3) });
    expect(of(made, ana).filter(({ work, startsAt, endsAt }) => work.kind !== 'break' && startsAt < at(3) && endsAt > at(2.5))).toEqual([]);
    expect((await house.app.get(Plans).breakTimes(house.database.manager, house.yardId)).get(breakId)).toBe(fromIso(at(2.5)));
  });
  it('lie in their windows', async () => {
    const [one, other] = sameIds(2) as [string, string];
    await post('/shifts', night([on(ana, [rest(one, 4, 6)]), on(bo, [rest(other, 4, 6)])]));
    const breaks = (await plan()).assignments.filter(({ work }) => work.kind === 'break');
    expect(breaks).toHaveLength(2);
    expect(breaks.every(({ startsAt }) => startsAt >= at(4) && startsAt <= at(6))).toBe(true);
  });
});

describe('facts of the night', () => {
  it('a check made moves the next one to about half an hour after it, and what was done is no change', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    await lightAll();
    const first = (await plan()).assignments.find(({ work }) => work.kind === 'check')!;
    const pitId = first.work.kind === 'check' ? first.work.pitId : '';
    house.now = later(fromIso(first.startsAt), 240);
    await post('/checks', { pitId, seenAt: toIso(house.now), bed: 'fair', left: 'some', raked: true, splits: 1 });
    const after = await plan();
    expect(after.because).toMatchObject({ cause: 'check', pitId });
    const next = checksOf(after, pitId)[0]!;
    expect(next.work).toEqual({ kind: 'check', pitId, nth: 2 });
    const inMinutes = (fromIso(next.startsAt) - house.now) / 60;
    expect(inMinutes).toBeGreaterThan(5);
    expect(inMinutes).toBeLessThanOrEqual(45);
    expect(after.changes.some(({ work }) => JSON.stringify(work) === JSON.stringify(first.work))).toBe(false);
  });

  it('a new task finds its people, two at once where it needs two, and is gone when it is done', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    const id = randomUUID();
    await post('/tasks', { id, kind: 'load', pitId: bess, earliestAt: at(2), dueAt: at(2.2), latestAt: at(2.5), lengthS: 900, people: 2 });
    const made = await plan();
    const load = made.assignments.find(({ work }) => work.kind === 'task' && work.taskId === id);
    expect([...(load?.people ?? [])].sort()).toEqual([ana, bo].sort());
    expect(made.because).toMatchObject({ cause: 'task', pitId: bess });
    await post(`/tasks/${id}/done`, { doneAt: at(0) });
    expect((await plan()).assignments.some(({ work }) => work.kind === 'task' && work.taskId === id)).toBe(false);
  });

  it('a check that nobody makes is planned anew once it has run over, by the minute', async () => {
    await post('/shifts', night([on(ana)], [bess]));
    await lightAll();
    const first = (await plan()).assignments.find(({ work }) => work.kind === 'check')!;
    const pass = async (now: EpochS) => {
      house.now = now;
      await house.database.query(`insert into outbox (yard_id, seq, event, at) select id, seq + 1, '{"kind":"minute-passed"}', now() from yard`);
      await house.database.query('update yard set seq = seq + 1');
      await house.settle();
    };
    const plans = await count('plan');
    await pass(later(fromIso(first.startsAt), -300));
    expect(await count('plan')).toBe(plans);
    await pass(later(fromIso(first.endsAt), 60));
    const after = await plan();
    const again = after.assignments.find(({ work }) => JSON.stringify(work) === JSON.stringify(first.work));
    expect(fromIso(again?.startsAt ?? '')).toBeGreaterThanOrEqual(house.now);
    await pass(fromIso(at(12)));
    expect(await house.app.get(Plans).view(house.database.manager, house.yardId)).toBeNull();
    expect(await count('plan where is_current')).toBe(0);
  });

  it('a fact whose reaction was cut off and runs again gives the same plan', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    await house.database.query(`update shift_person set presence = 'away', presence_from = starts_at where crew_member_id = $1`, [bo]);
    const plans: (PlanView | null)[] = [];
    const cutOff = async () => {
      await house.app.get(Deeds).run(house.yardId, async (deed) => {
        await house.app.get(PlanningReactions).onPresence({ kind: 'presence-reported', personId: bo as never }, deed);
        plans.push(await house.app.get(Plans).view(deed.em, house.yardId));
        throw new Error('cut off');
      });
    };
    await expect(cutOff()).rejects.toThrow('cut off');
    await expect(cutOff()).rejects.toThrow('cut off');
    expect(plans[0]).toEqual(plans[1]);
    expect(of(planView.parse(plans[0]), bo)).toEqual([]);
    expect(of(await plan(), bo).length).toBeGreaterThan(15);
  });

  it('old plans go, a dozen stay', async () => {
    await post('/shifts', night([on(ana), on(bo)]));
    for (let n = 1; n <= 14; n++) {
      await post('/tasks', { id: randomUUID(), kind: 'haul', pitId: null, earliestAt: at(1), dueAt: at(3), latestAt: at(8), lengthS: 300, people: 1 });
    }
    expect(await count('plan')).toBe(12);
    expect(await count('plan where is_current')).toBe(1);
    expect((await house.app.get(Plans).assignmentsOf(house.database.manager, house.yardId, bo as never)).length).toBeGreaterThan(15);
  });

  it('rows that make no problem give no plan: the one before it stays, and the log says what is wrong', async () => {
    const breakId = randomUUID();
    await post('/shifts', night([on(ana, [rest(breakId, 4, 6)]), on(bo)]));
    const before = await plan();
    await house.database.query(`update crew_break set latest_at = latest_at + interval '12 hours'`);
    const said = vi.spyOn(log, 'error').mockReturnValue();
    await post('/presence', { personId: bo, state: 'away' });
    expect(said.mock.calls.map(([about]) => JSON.stringify(about))).toEqual([expect.stringContaining('break-outside-shift')]);
    said.mockRestore();
    expect(await plan()).toEqual(before);
    await house.database.query(`update crew_break set latest_at = latest_at - interval '12 hours'`);
    await post('/presence', { personId: bo, state: 'here' });
    await post('/presence', { personId: bo, state: 'away' });
    expect(of(await plan(), bo)).toEqual([]);
  });

  it('when nobody has the skill for the fires, the plan says so', async () => {
    await house.database.query(`delete from skill where skill = 'fire'`);
    await post('/shifts', night([on(ana)], [bess]));
    const made = await plan();
    expect(new Set(made.unplaced.map(({ reason }) => reason))).toEqual(new Set(['nobody-with-skill']));
    expect(made.load.some(({ skill, fails }) => skill === 'fire' && fails)).toBe(true);
  });
});
