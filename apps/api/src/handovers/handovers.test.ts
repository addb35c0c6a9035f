import { handover } from '@stokehold/domain/contract';
import { fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ChecksModule, ChecksReactions } from '../checks/index.js';
import { Deeds } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { HandoversModule } from './index.js';

let house: TestHouse;
const [bo, bess, nell, shift, lot, cook] = Array.from({ length: 6 }, () => randomUUID()) as [string, string, string, string, string, string];
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
  expect(handover.strict().parse(body)).toMatchObject({ signedBy: 'Renske', to: null, fires: [], food: [], splitsLeft: 0, openAlarms: 0 });
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

  expect((await post('/handovers', command).expect(201)).body).toEqual(signed);
  await post('/wood-moves', { lotId: lot, pitId: bess, pieces: 5, way: 'bring-back' }).expect(201);
  await house.database.query(`update crew_member set name = 'Boudewijn' where id = $1`, [bo]);
  expect((await last()).map((one) => handover.strict().parse(one))[0]).toEqual(signed);
  expect(await last()).toHaveLength(2);
});

it('a handover to somebody who is not of the crew is refused, and nothing is signed', async () => {
  const before = await last();
  expect((await post('/handovers', { toPersonId: randomUUID(), note: '' }).expect(404)).body.code).toBe('person-unknown');
  expect((await post('/handovers', { toPersonId: bo, note: 'x'.repeat(501) }).expect(400)).body.code).toBe('input-invalid');
  expect(await last()).toEqual(before);
});
