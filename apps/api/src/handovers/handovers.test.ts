import { handover, handoverNow } from '@stokehold/domain/contract';
import { fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ChecksModule, ChecksReactions } from '../checks/index.js';
import { Deeds } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { HandoversModule } from './index.js';

let house: TestHouse;
const [bo, bess, nell, shift, lot, cook, plan] = Array.from({ length: 7 }, () => randomUUID()) as [string, string, string, string, string, string, string];
const EVENING = fromIso('2027-01-15T23:00:00Z');
beforeAll(async () => {
  house = await openTestHouse([HandoversModule, ChecksModule]);
  house.now = EVENING;
  await house.database.query(`insert into crew_member values ($1, $2, 'Bo', 'crew', 'en', 2000, null, false)`, [bo, house.yardId]);
  for (const [id, name] of [[bess, 'Bess'], [nell, 'Nell']]) {
    await house.database.query(`insert into pit values ($1, $2, $3, 3, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [id, house.yardId, name]);
    await house.database.query('insert into zone values ($1, 0, 1.15), ($1, 1, 1.15)', [id]);
  }
});
afterAll(async () => {
  await house.settle();
  await house.close();
});

const at = (hours: number) => toIso(later(EVENING, hours * 3600));
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const last = async () => (await request(house.app.getHttpServer()).get('/api/handovers').expect(200)).body as unknown[];

it('a night that has not begun is handed over with nothing on it', async () => {
  const { body } = await post('/handovers', { toPersonId: null, note: '' }).expect(201);
  expect(handover.strict().parse(body)).toMatchObject({ signedBy: 'Renske', to: null, fires: [], food: [], splitsLeft: 0, openAlarms: 0, openChecks: [], promised: [], alarms: [] });
});

it('a handover says how the fires stand, what lies where and what wood is left, and stays as it was signed', async () => {
  await post('/shifts', { id: shift, startsAt: at(0), endsAt: at(12), people: [], pits: [bess, nell].map((pitId) => ({ pitId, band: { lowC: 118, highC: 124 }, lightAt: at(0) })) }).expect(201);
  const bought = { id: lot, name: 'Oak', species: 'white-oak', lengthM: 0.37, thicknessM: 0.09, moisture: 0.15, boughtAt: at(-100), priceCents: 20000 };
  await post('/lots', { lot: bought, pieces: 80 }).expect(201);
  await post('/wood-moves', { lotId: lot, pitId: bess, pieces: 12, way: 'pull' }).expect(201);
  await post('/cooks', { cook: { id: cook, cut: 'Brisket', shape: 'slab', pieces: 5, weightKg: 30, serviceId: null, comesOffAt: null } }).expect(201);
  await post('/placements', { cookId: cook, lies: [{ pitId: bess, zone: 0, pieces: 3 }, { pitId: nell, zone: 1, pieces: 2 }] }).expect(201);
  house.now = later(EVENING, 2 * 3600);
  const { body } = await post('/checks', { pitId: bess, seenAt: at(2), bed: 'fair', left: 'some', raked: true, splits: 2, fireEndTempC: 121, stackEndTempC: 118 }).expect(201);
  await house.app.get(Deeds).run(house.yardId, (deed) => house.app.get(ChecksReactions).onCheckRecorded({ kind: 'check-recorded', pitId: bess as never, checkId: body.check.id }, deed));

  const command = { key: randomUUID(), toPersonId: bo, note: 'Nell draws badly in this wind' };
  const signed = handover.strict().parse((await post('/handovers', command).expect(201)).body);
  expect(signed).toMatchObject({
    signedAt: at(2), signedBy: 'Renske', to: 'Bo', note: command.note, splitsLeft: 78, openAlarms: 0,
    food: [{ pit: 'Bess', cut: 'Brisket', pieces: 3 }, { pit: 'Nell', cut: 'Brisket', pieces: 2 }],
  });
  expect(signed.fires.map(({ pit, bed }) => [pit, bed])).toEqual([['Bess', 'fair'], ['Nell', null]]);
  expect(signed.fires[0]?.tempC).toBeGreaterThan(100);
  expect(fromIso(signed.fires[0]?.dueAt ?? '')).toBeGreaterThan(house.now);

  // Bess was looked at and is due in an hour at the latest; nobody is on the shift, so what is due before its end is the signer's.
  expect(signed.openChecks.map(({ pit, side, owner }) => [pit, side, owner])).toEqual([['Bess', 'this-crew', 'Renske']]);
  expect(signed.promised).toEqual([]);
  const now = handoverNow.strict().parse((await request(house.app.getHttpServer()).get('/api/handovers/now').query({ toPersonId: bo }).expect(200)).body);
  expect(now).toEqual({ to: 'Bo', fires: signed.fires, food: signed.food, splitsLeft: 78, openAlarms: 0, openChecks: signed.openChecks, promised: [], alarms: [] });
  expect((await post('/handovers', command).expect(201)).body).toEqual(signed);
  await post('/wood-moves', { lotId: lot, pitId: bess, pieces: 5, way: 'bring-back' }).expect(201);
  await house.database.query(`update crew_member set name = 'Boudewijn' where id = $1`, [bo]);
  expect((await last()).map((one) => handover.strict().parse(one))[0]).toEqual(signed);
  expect(await last()).toHaveLength(2);
});

it('what is open and what was promised goes over with the night, each check with an owner on one side', async () => {
  await house.database.query(`insert into alarm (id, yard_id, kind, pit_id, state, raised_at) values ($1, $2, 'bed-nearly-out', $3, 'unacknowledged', $4)`, [randomUUID(), house.yardId, nell, at(11)]);
  house.now = later(EVENING, 11.7 * 3600);
  await house.database.query(`insert into skill values ($1, 'fire')`, [bo]);
  const next = { personId: bo, startsAt: at(12), endsAt: at(20), breaks: [] };
  await post('/shifts', { id: randomUUID(), startsAt: at(12), endsAt: at(20), people: [next], pits: [] }).expect(201);
  await house.database.query(`insert into plan (id, yard_id, shift_id, made_at, is_current, cause, unplaced, load, changes, decisions, late_weighted_s, bound_weighted_s)
    values ($1, $2, $3, $4, true, '{"cause":"first","pitId":null,"personId":null}', '[]', '[]', '[]', '[]', 0, 0)`, [plan, house.yardId, shift, at(11.5)]);
  await house.database.query(`insert into assignment (plan_id, nth, kind, pit_id, nth_check, people, starts_at, ends_at, late_s, past_latest_s) values ($1, 0, 'check', $2, 9, $3, $4, $5, 0, 0)`, [plan, nell, [bo], at(11.9), at(12)]);
  const signed = handover.strict().parse((await post('/handovers', { toPersonId: null, note: '' }).expect(201)).body);
  expect(signed.promised).toEqual([{ work: 'check', pit: 'Nell', people: ['Boudewijn'], at: at(11.9) }]);
  expect(signed.alarms).toEqual([{ kind: 'bed-nearly-out', pit: 'Nell', since: at(11) }]);
  expect(signed.openChecks.every(({ owner }) => owner !== null)).toBe(true);
});

it('a handover signed before open checks were kept is read as it was', async () => {
  await house.database.query(`update handover set summary = summary - 'openChecks' - 'promised' - 'alarms'`);
  expect(handover.strict().array().parse(await last())[0]).toMatchObject({ openChecks: [], promised: [], alarms: [] });
});

it('a handover to somebody who is not of the crew is refused, and nothing is signed', async () => {
  const before = await last();
  expect((await post('/handovers', { toPersonId: randomUUID(), note: '' }).expect(404)).body.code).toBe('person-unknown');
  expect((await post('/handovers', { toPersonId: bo, note: 'x'.repeat(501) }).expect(400)).body.code).toBe('input-invalid');
  expect(await last()).toEqual(before);
});
