import { planView, type EventKind, type PlanView } from '@stokehold/domain/contract';
import { fromIso, later, toIso, type EpochS } from '@stokehold/domain/quantity';
import { DateTime } from 'luxon';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { ChecksModule, ChecksReactions } from '../checks/index.js';
import { PitsModule, PitsReactions } from '../pits/index.js';
import { Deeds, log, Outbox, type Reaction, type Reactions } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { ShiftsModule } from '../shifts/index.js';
import { PlanningModule, PlanningReactions, Plans } from './index.js';

let house: TestHouse;
const uuids = (n: number) => Array.from({ length: n }, () => randomUUID()) as string[];
const [ana, bo, cy, bess, nell, ruth] = uuids(6) as [string, string, string, string, string, string];
const EVENING = fromIso('2027-01-15T23:00:00Z');

const EVERY_KIND: readonly EventKind[] = [
  'yard-set-up', 'pit-set-up', 'crew-set-up', 'shift-planned', 'presence-reported', 'break-reported', 'task-added', 'task-finished', 'handover-signed', 'check-recorded',
  'readings-recorded', 'weather-recorded', 'lot-changed', 'wood-moved', 'cook-changed', 'service-changed', 'alarm-changed', 'minute-passed', 'fire-estimated', 'due-moved',
  'plan-repaired',
];
function wire(): void {
  const [checks, pits, planning] = [house.app.get(ChecksReactions), house.app.get(PitsReactions), house.app.get(PlanningReactions)];
  const none = Object.fromEntries(EVERY_KIND.map((kind) => [kind, [] as Reaction<never>[]])) as unknown as Reactions;
  house.app.get(Outbox).react({
    ...none,
    'crew-set-up': [(event, deed) => planning.onSetUp(event, deed)],
    'shift-planned': [(event, deed) => pits.onShiftPlanned(event, deed), (event, deed) => planning.onShift(event, deed)],
    'presence-reported': [(event, deed) => planning.onPresence(event, deed)],
    'break-reported': [(event, deed) => planning.onBreak(event, deed)],
    'task-added': [(event, deed) => planning.onTask(event, deed)],
    'task-finished': [(event, deed) => pits.onTaskFinished(event, deed), (event, deed) => planning.onTask(event, deed)],
    'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
    'minute-passed': [(event, deed) => pits.onMinute(event, deed), (event, deed) => planning.onMinute(event, deed)],
    'due-moved': [(event, deed) => planning.onDueMoved(event, deed)],
  });
}

beforeEach(async () => {
  house = await openTestHouse([ShiftsModule, PitsModule, ChecksModule, PlanningModule]);
  wire();
  house.now = EVENING;
  for (const [id, name] of [[ana, 'Ana'], [bo, 'Bo'], [cy, 'Cy']]) {
    await house.database.query(`insert into crew_member values ($1, $2, $3, 'crew', 'en', 2000, null, false)`, [id, house.yardId, name]);
    await house.database.query(`insert into skill values ($1, 'fire'), ($1, 'food'), ($1, 'lifting')`, [id]);
  }
  for (const [nth, [id, name]] of [[bess, 'Bess'], [nell, 'Nell'], [ruth, 'Ruth']].entries()) {
    await addPit(id, name, 5 + 8 * nth);
  }
});
afterEach(async () => {
  await house.settle();
  await house.close();
});

async function addPit(id: string | undefined, name: string | undefined, xM: number): Promise<void> {
  await house.database.query(`insert into pit values ($1, $2, $3, $4, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [id, house.yardId, name, xM]);
  await house.database.query('insert into zone values ($1, 0, 1.15), ($1, 1, 1.15)', [id]);
}
const at = (hours: number) => toIso(later(EVENING, Math.round(hours * 3600)));
const turnTo = (hours: number) => (house.now = later(EVENING, Math.round(hours * 3600)));
async function post(path: string, body: object) {
  const { body: reply } = await request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body }).expect(201);
  await house.settle();
  return reply;
}
const band = { lowC: 118, highC: 124 };
const rest = (id: string, from: number, until: number, lengthS = 1800) => ({ id, lengthS, earliestAt: at(from), latestAt: at(until) });
const on = (personId: string, breaks: object[] = [], from = 0, until = 12) => ({ personId, startsAt: at(from), endsAt: at(until), breaks });
const night = (people: object[], pits: string[] = [bess, nell, ruth]) => ({
  id: randomUUID() as string, startsAt: at(0), endsAt: at(12), people, pits: pits.map((pitId, n) => ({ pitId, band, lightAt: at(0.25 + n / 10) })),
});
async function plan(): Promise<PlanView> {
  const view = await house.app.get(Plans).view(house.database.manager, house.yardId);
  return planView.strict().parse(view);
}
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
    const pits = uuids(8);
    for (const [nth, id] of pits.entries()) {
      await addPit(id, `Pit ${nth}`, 3 * nth);
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
  it('late: their checks go to others, and the plan says what changed and why', async () => {
    await post('/shifts', night([on(ana), on(bo), on(cy)]));
    const before = await plan();
    const theirs = of(before, bo).filter(({ startsAt }) => startsAt < at(1.5));
    expect(theirs.length).toBeGreaterThan(0);
    await post('/presence', { personId: bo, state: 'late', until: at(1.5) });
    const after = await plan();
    expect(after.because).toEqual({ cause: 'presence', pitId: null, personId: bo });
    expect(of(after, bo).every(({ startsAt }) => startsAt >= at(1.5))).toBe(true);
    expect(after.unplaced).toEqual([]);
    for (const { work } of theirs) {
      const change = after.changes.find((one) => JSON.stringify(one.work) === JSON.stringify(work));
      expect(change?.code).toMatch(/other-person|gone/);
      expect(change?.from?.people).toEqual([bo]);
      expect(change?.to?.people ?? []).not.toContain(bo);
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
    const [one, other] = uuids(2) as [string, string];
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
    for (let n = 1; n <= 14; n++) await post('/presence', { personId: ana, state: n % 2 ? 'away' : 'here' });
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
