import { fromIso, later, toIso, type YardId } from '@stokehold/domain/quantity';
import { personOnShift, routes, shiftView, taskView } from '@stokehold/domain/contract';
import { DateTime } from 'luxon';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Shifts, ShiftsModule, Tasks } from './index.js';

let house: TestHouse;
const [ana, bo, gone, bess, nell, old] = Array.from({ length: 6 }, () => randomUUID()) as [string, string, string, string, string, string];
/** 23:00 UTC on 15 January is 17:00 in Chicago: an hour before the night. */
const EVENING = fromIso('2027-01-15T23:00:00Z');

beforeAll(async () => {
  house = await openTestHouse([ShiftsModule]);
  for (const [id, name, left] of [[ana, 'Ana', false], [bo, 'Bo', false], [gone, 'Cy', true]]) {
    await house.database.query(`insert into crew_member values ($1, $2, $3, 'crew', 'en', 2000, null, $4)`, [id, house.yardId, name, left]);
  }
  await house.database.query(`insert into skill values ($1, 'fire'), ($1, 'food'), ($2, 'fire')`, [ana, bo]);
  for (const [id, name, retired] of [[bess, 'Bess', false], [nell, 'Nell', false], [old, 'Old', true]]) {
    await house.database.query(`insert into pit values ($1, $2, $3, 3, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, $4)`, [id, house.yardId, name, retired]);
  }
});
beforeEach(async () => {
  house.now = EVENING;
  await house.database.query('delete from shift');
});
afterAll(async () => {
  await house.settle();
  await house.close();
});

const at = (hours: number) => toIso(later(EVENING, hours * 3600));
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const rest = (id: string, from: number, until: number, lengthS = 1800) => ({ id, lengthS, earliestAt: at(from), latestAt: at(until) });
const band = { lowC: 118, highC: 124 };
const night = (more: object = {}) => ({
  id: randomUUID() as string, startsAt: at(1), endsAt: at(13),
  people: [{ personId: ana, startsAt: at(1), endsAt: at(9), breaks: [rest(randomUUID(), 4, 6)] }, { personId: bo, startsAt: at(5), endsAt: at(13), breaks: [] }],
  pits: [{ pitId: bess, band, lightAt: at(1.5) }, { pitId: nell, band, lightAt: at(2) }],
  ...more,
});
const em = () => house.database.manager;
const view = async () => shiftView.strict().nullable().parse(await house.app.get(Shifts).view(em(), house.yardId, house.now));
const tasks = async () => z.array(taskView.strict()).parse(await house.app.get(Tasks).view(em(), house.yardId, house.now));
const told = async () => ((await house.database.query('select event from outbox order by seq')) as { event: { kind: string } }[]).map(({ event }) => event.kind);

describe('planning a shift', () => {
  it('keeps who works when and which pits burn, and makes a light task for each pit', async () => {
    const shift = night();
    expect((await post('/shifts', shift).expect(201)).body).toEqual({ done: true });
    expect(await view()).toMatchObject({ id: shift.id, startsAt: shift.startsAt, endsAt: shift.endsAt, pits: shift.pits });
    expect((await view())?.people.map(({ name, presence, breaks }) => [name, presence, breaks.length])).toEqual([['Ana', 'not-yet', 1], ['Bo', 'not-yet', 0]]);
    expect((await tasks()).map(({ kind, pitId, dueAt }) => [kind, pitId, dueAt])).toEqual([['light', bess, at(1.5)], ['light', nell, at(2)]]);
    expect((await told()).at(-1)).toBe('shift-planned');
  });

  it('under the same key twice happens once', async () => {
    const command = { ...night(), key: randomUUID() };
    await post('/shifts', command).expect(201);
    await post('/shifts', command).expect(201);
    expect(await house.database.query('select id from shift')).toHaveLength(1);
    expect(await tasks()).toHaveLength(2);
  });

  const shiftRefusals: readonly (readonly [string, number, () => object])[] = [
    ['shift-ends-before-it-begins', 409, () => night({ endsAt: at(0) })],
    ['shift-too-long', 409, () => night({ endsAt: at(26) })],
    ['shift-has-ended', 409, () => night({ startsAt: at(-8), endsAt: at(-1), people: [], pits: [] })],
    ['hours-outside-shift', 409, () => night({ people: [{ personId: ana, startsAt: at(-3), endsAt: at(9), breaks: [] }] })],
    ['person-on-two-shifts', 409, () => night({ people: [1, 2].map((from) => ({ personId: ana, startsAt: at(from), endsAt: at(9), breaks: [] })) })],
    ['break-outside-shift', 409, () => night({ people: [{ personId: ana, startsAt: at(1), endsAt: at(9), breaks: [rest(randomUUID(), 4, 8.6)] }] })],
    ['light-outside-shift', 409, () => night({ pits: [{ pitId: bess, band, lightAt: at(13) }] })],
    ['person-unknown', 404, () => night({ people: [{ personId: randomUUID(), startsAt: at(1), endsAt: at(9), breaks: [] }] })],
    ['person-unknown', 404, () => night({ people: [{ personId: gone, startsAt: at(1), endsAt: at(9), breaks: [] }] })],
    ['pit-unknown', 404, () => night({ pits: [{ pitId: old, band, lightAt: at(2) }] })],
    ['input-invalid', 400, () => night({ pits: [{ pitId: bess, band, lightAt: at(2) }, { pitId: bess, band, lightAt: at(3) }] })],
    ['input-invalid', 400, () => night({ startsAt: 'this evening' })],
  ];
  it.each(shiftRefusals)('is refused with %s (%d), and nothing of it is kept', async (code, status, shift) => {
    const { body } = await post('/shifts', shift()).expect(status);
    expect(body.code).toBe(code);
    expect(routes.planShift.refusals.includes(code as never) || code === 'input-invalid').toBe(true);
    expect(await house.database.query('select id from shift')).toEqual([]);
  });

  it('is refused where another shift of the yard runs, or a person would be on both', async () => {
    await post('/shifts', night()).expect(201);
    expect((await post('/shifts', night()).expect(409)).body.code).toBe('shift-overlaps');
    const day = night({ startsAt: at(13), endsAt: at(20), pits: [], people: [{ personId: bo, startsAt: at(12), endsAt: at(18), breaks: [] }] });
    expect((await post('/shifts', day).expect(409)).body.code).toBe('person-on-two-shifts');
    await post('/shifts', { ...day, people: [{ personId: bo, startsAt: at(13), endsAt: at(18), breaks: [] }] }).expect(201);
  });

  it('two overlapping shifts at the same moment become one', async () => {
    const answers = await Promise.all([post('/shifts', night()), post('/shifts', night())]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
  });

  it('of another yard, or with the break of another shift, is refused', async () => {
    const shift = night();
    await post('/shifts', shift).expect(201);
    const taken = night({ startsAt: at(14), endsAt: at(20), pits: [], people: [{ personId: bo, startsAt: at(14), endsAt: at(20), breaks: [rest(shift.people[0]!.breaks[0]!.id, 15, 16)] }] });
    expect((await post('/shifts', taken).expect(409)).body.code).toBe('id-taken');
    const other = randomUUID();
    await house.database.query(`insert into yard select $1, 'Elsewhere', time_zone, units, language, 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, created_at from yard limit 1`, [other]);
    await house.database.query('update shift set yard_id = $1', [other]);
    expect((await post('/shifts', shift).expect(404)).body.code).toBe('shift-unknown');
  });
});

describe('changing a running shift', () => {
  it('keeps breaks that have begun and tasks that are done, and moves the rest', async () => {
    const shift = night();
    const restId = shift.people[0]!.breaks[0]!.id;
    await post('/shifts', shift).expect(201);
    house.now = later(EVENING, 4.5 * 3600);
    await post('/breaks', { breakId: restId, state: 'begun' }).expect(201);
    const [first, second] = await tasks();
    await post(`/tasks/${first!.id}/done`, { doneAt: at(1.6) }).expect(201);
    const moved = { ...shift, endsAt: at(12), people: [{ ...shift.people[0]!, breaks: [rest(restId, 7, 8), rest(randomUUID(), 7, 8, 600)] }], pits: shift.pits.map((pit) => ({ ...pit, lightAt: at(5) })) };
    await post('/shifts', moved).expect(201);
    const after = await view();
    expect(after?.endsAt).toBe(at(12));
    expect(after?.people).toHaveLength(1);
    expect(after?.people[0]?.breaks.map(({ earliestAt, beganAt }) => [earliestAt, beganAt])).toEqual([[at(4), at(4.5)], [at(7), null]]);
    house.now = later(EVENING, 3 * 3600);
    expect((await tasks()).map(({ id, dueAt, doneAt }) => [id, dueAt, doneAt])).toEqual([[first!.id, at(1.5), at(1.6)], [second!.id, at(5), null]]);
  });

  it('takes the light task of a pit that burns no more', async () => {
    const shift = night();
    await post('/shifts', shift).expect(201);
    await post('/shifts', { ...shift, pits: shift.pits.slice(1) }).expect(201);
    expect((await tasks()).map(({ pitId }) => pitId)).toEqual([nell]);
  });

  it('is over when the shift is', async () => {
    const shift = night();
    await post('/shifts', shift).expect(201);
    house.now = later(EVENING, 13 * 3600);
    expect((await post('/shifts', shift).expect(409)).body.code).toBe('shift-has-ended');
  });
});

it('the next shift is the running one from three hours before its start', async () => {
  await post('/shifts', night()).expect(201);
  house.now = later(EVENING, -2 * 3600 - 1);
  expect(await view()).toBeNull();
  house.now = later(EVENING, -2 * 3600);
  expect(await view()).not.toBeNull();
  house.now = later(EVENING, 13 * 3600);
  expect(await view()).toBeNull();
});

describe('who is there', () => {
  const presence = async () => (await view())?.people.map((person) => [person.name, personOnShift.parse(person).presence, person.presenceUntil]);
  it('is late until they come, and paid from then on', async () => {
    await post('/shifts', night()).expect(201);
    house.now = later(EVENING, 1.25 * 3600);
    await post('/presence', { personId: ana, state: 'late', until: at(2) }).expect(201);
    expect(await presence()).toEqual([['Ana', 'late', at(2)], ['Bo', 'not-yet', null]]);
    house.now = later(EVENING, 1.75 * 3600);
    await post('/presence', { personId: ana, state: 'here' }).expect(201);
    expect(await presence()).toEqual([['Ana', 'here', null], ['Bo', 'not-yet', null]]);
    // by hand: Ana 8 h less 45 min, Bo 8 h
    expect(await house.app.get(Shifts).paid(em(), house.yardId, EVENING, later(EVENING, 20 * 3600))).toEqual(
      [{ personId: ana, paidS: 7.25 * 3600 }, { personId: bo, paidS: 8 * 3600 }].sort((one, other) => (one.personId < other.personId ? -1 : 1)),
    );
    expect((await told()).slice(-2)).toEqual(['presence-reported', 'presence-reported']);
  });
  it('can be said before the night, for somebody on it only', async () => {
    await post('/shifts', night()).expect(201);
    house.now = later(EVENING, -20 * 3600);
    await post('/presence', { personId: ana, state: 'away' }).expect(201);
    expect((await post('/presence', { personId: gone, state: 'late' }).expect(409)).body.code).toBe('person-not-on-shift');
    house.now = later(EVENING, 9 * 3600);
    expect((await post('/presence', { personId: ana, state: 'here' }).expect(409)).body.code).toBe('person-not-on-shift');
  });
});

describe('a break', () => {
  it('is begun and ended, and the same report again changes nothing', async () => {
    const shift = night();
    const breakId = shift.people[0]!.breaks[0]!.id;
    await post('/shifts', shift).expect(201);
    house.now = later(EVENING, 4 * 3600);
    await post('/breaks', { breakId, state: 'begun' }).expect(201);
    expect((await view())?.people[0]?.onBreak).toBe(true);
    house.now = later(EVENING, 4.4 * 3600);
    await post('/breaks', { breakId, state: 'begun' }).expect(201);
    await post('/breaks', { breakId, state: 'ended' }).expect(201);
    expect((await view())?.people[0]?.breaks[0]).toMatchObject({ beganAt: at(4), endedAt: at(4.4) });
    expect((await view())?.people[0]?.onBreak).toBe(false);
  });
  it('that nobody knows is refused, and one of a shift that does not run', async () => {
    expect((await post('/breaks', { breakId: randomUUID(), state: 'begun' }).expect(404)).body.code).toBe('break-unknown');
    const shift = night();
    await post('/shifts', shift).expect(201);
    house.now = later(EVENING, -5 * 3600);
    expect((await post('/breaks', { breakId: shift.people[0]!.breaks[0]!.id, state: 'begun' }).expect(409)).body.code).toBe('person-not-on-shift');
  });
});

describe('a task', () => {
  const haul = (more: object = {}) => ({ id: randomUUID() as string, kind: 'haul', pitId: null, earliestAt: at(3), dueAt: at(4), latestAt: at(5), lengthS: 900, people: 2, ...more });
  it('is added to the shift it falls into, changed under the same id, and done once', async () => {
    await post('/shifts', night({ pits: [] })).expect(201);
    const task = haul({ note: 'the dry oak' });
    await post('/tasks', task).expect(201);
    await post('/tasks', { ...task, dueAt: at(4.5) }).expect(201);
    expect((await tasks()).map(({ dueAt, note, people }) => [dueAt, note, people])).toEqual([[at(4.5), 'the dry oak', 2]]);
    house.now = later(EVENING, 4 * 3600);
    const key = randomUUID();
    await post(`/tasks/${task.id}/done`, { key, doneAt: at(3.9) }).expect(201);
    await post(`/tasks/${task.id}/done`, { key, doneAt: at(3.9) }).expect(201);
    expect((await tasks())[0]).toMatchObject({ doneAt: at(3.9), doneBy: house.actor?.person?.id });
    expect((await post(`/tasks/${task.id}/done`, { doneAt: at(4) }).expect(409)).body.code).toBe('task-done-already');
    expect((await post('/tasks', task).expect(409)).body.code).toBe('task-done-already');
    expect(await house.app.get(Tasks).open(em(), house.yardId, house.now)).toEqual([]);
    house.now = later(EVENING, 6 * 3600);
    expect(await tasks()).toEqual([]);
  });
  it('done by a phone whose clock runs 45 minutes fast was done when it was', async () => {
    const task = haul();
    await post('/tasks', task).expect(201);
    await post(`/tasks/${task.id}/done`, { doneAt: at(0.5), sentAt: at(0.75) }).expect(201);
    expect((await tasks())[0]?.doneAt).toBe(at(-0.25));
  });
  it.each([
    ['times-out-of-order', 409, { dueAt: toIso(later(EVENING, 2 * 3600)) }],
    ['times-out-of-order', 409, { latestAt: toIso(later(EVENING, 3.5 * 3600)) }],
    ['pit-unknown', 404, { pitId: randomUUID() }],
    ['input-invalid', 400, { lengthS: 5 * 3600 }],
    ['input-invalid', 400, { people: 3 }],
  ])('is refused with %s (%d)', async (code, status, more) => {
    expect((await post('/tasks', haul(more)).expect(status)).body.code).toBe(code);
  });
  it('that nobody knows cannot be done', async () => {
    expect((await post(`/tasks/${randomUUID()}/done`, { doneAt: at(0) }).expect(404)).body.code).toBe('task-unknown');
  });
});

it('what belongs to another yard is unknown here', async () => {
  const shift = night();
  await post('/shifts', shift).expect(201);
  const here = house.actor!;
  house.actor = { ...here, yardId: randomUUID() as YardId };
  await house.database.query(`insert into yard select $1, 'Far', time_zone, units, language, 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, created_at from yard limit 1`, [house.actor.yardId]);
  const [task] = await tasks();
  expect((await post(`/tasks/${task!.id}/done`, { doneAt: at(0) }).expect(404)).body.code).toBe('task-unknown');
  expect((await post('/presence', { personId: ana, state: 'away' }).expect(409)).body.code).toBe('person-not-on-shift');
  house.actor = here;
});

// The time zone database: America/Chicago goes from CST to CDT on 2027-03-14 at 02:00 and back on 2027-11-07 at 02:00.
it.each([
  { evening: '2027-03-13', morning: '2027-03-14', hours: 11 },
  { evening: '2027-11-06', morning: '2027-11-07', hours: 13 },
])('the night of $evening, 18:00 to 06:00 on the wall, is kept as $hours hours', async ({ evening, morning, hours }) => {
  const wall = (time: string) => toIso(fromIso(DateTime.fromISO(time, { zone: 'America/Chicago' }).toUTC().toISO()!));
  const [startsAt, endsAt] = [wall(`${evening}T18:00`), wall(`${morning}T06:00`)];
  house.now = fromIso(startsAt);
  await post('/shifts', night({ startsAt, endsAt, pits: [], people: [{ personId: ana, startsAt, endsAt, breaks: [] }] })).expect(201);
  const kept = await view();
  expect((fromIso(kept!.endsAt) - fromIso(kept!.startsAt)) / 3600).toBe(hours);
  expect(await house.app.get(Shifts).paid(em(), house.yardId, house.now, fromIso(endsAt))).toEqual([{ personId: ana, paidS: hours * 3600 }]);
});
