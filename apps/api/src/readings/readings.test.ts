import type { PitId } from '@stokehold/domain/quantity';
import { later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Readings, ReadingsModule } from './index.js';

let house: TestHouse;
const pit = randomUUID() as PitId;
const [fireEnd, stackEnd, taken] = [randomUUID(), randomUUID(), randomUUID()];
beforeAll(async () => {
  house = await openTestHouse([ReadingsModule]);
  await house.database.query(`insert into pit values ($1, $2, 'Bess', 3, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [pit, house.yardId]);
  for (const [id, name, zone, removed] of [[fireEnd, 'F', 0, false], [stackEnd, 'S', 2, false], [taken, 'Old', 0, true]]) {
    await house.database.query('insert into probe values ($1, $2, $3, $4, $5, $6)', [id, house.yardId, pit, name, zone, removed]);
  }
});
beforeEach(() => house.database.query('delete from reading'));
afterAll(async () => {
  await house.settle();
  await house.close();
});

const ago = (seconds: number) => toIso(later(house.now, -seconds));
const send = (readings: object[], more: object = {}) =>
  request(house.app.getHttpServer()).post('/api/readings').send({ key: randomUUID(), readings, ...more });
const stored = () => house.database.query('select * from reading order by probe_id, taken_at') as Promise<{ probe_id: string; taken_at: Date; device_taken_at: Date }[]>;
const means = () => house.app.get(Readings).means(house.database.manager, house.yardId, { from: later(house.now, -3600), until: house.now, stretchS: 120 });

it('a batch is kept, and sent again under another key its readings are counted as repeated', async () => {
  const batch = [{ probeId: fireEnd, tempC: 121, takenAt: ago(20) }, { probeId: stackEnd, tempC: 117, takenAt: ago(20) }];
  expect((await send(batch).expect(201)).body).toEqual({ kept: 2, repeated: 0 });
  expect((await send([...batch, { probeId: fireEnd, tempC: 122, takenAt: ago(10) }]).expect(201)).body).toEqual({ kept: 1, repeated: 2 });
  expect(await stored()).toHaveLength(3);
});

it('the same key again brings the first answer', async () => {
  const key = randomUUID();
  const batch = [{ probeId: fireEnd, tempC: 121, takenAt: ago(20) }];
  const first = await send(batch, { key }).expect(201);
  const again = await send(batch, { key }).expect(201);
  expect(again.body).toEqual(first.body);
  expect(await stored()).toHaveLength(1);
});

it('one reading three times in a batch is one row', async () => {
  const one = { probeId: fireEnd, tempC: 121, takenAt: ago(20) };
  expect((await send([one, one, one]).expect(201)).body).toEqual({ kept: 1, repeated: 2 });
});

it('an unknown probe is refused with its id, and nothing of the batch is kept', async () => {
  const unknown = randomUUID();
  const { body } = await send([{ probeId: fireEnd, tempC: 121, takenAt: ago(5) }, { probeId: unknown, tempC: 121, takenAt: ago(5) }]).expect(404);
  expect(body).toMatchObject({ code: 'probe-unknown', values: { probeId: unknown } });
  expect(await stored()).toHaveLength(0);
});

it.each([1300, -80, Number.NaN])('a reading of %d °C is no reading and is refused with its field', async (tempC) => {
  const { body } = await send([{ probeId: fireEnd, tempC, takenAt: ago(5) }]).expect(400);
  expect(body.fields[0].path).toBe('readings.0.tempC');
});

it('the means stand per zone and two minutes; a removed probe and a reading of the future are kept and left out', async () => {
  await send([
    { probeId: fireEnd, tempC: 120, takenAt: ago(100) },
    { probeId: fireEnd, tempC: 124, takenAt: ago(10) },
    { probeId: fireEnd, tempC: 90, takenAt: ago(130) },
    { probeId: stackEnd, tempC: 118, takenAt: ago(0) },
    { probeId: taken, tempC: 300, takenAt: ago(10) },
    { probeId: fireEnd, tempC: 300, takenAt: ago(-600) },
  ]).expect(201);
  expect(await stored()).toHaveLength(6);
  expect((await means()).get(pit)).toEqual([
    { pitId: pit, zone: 0, until: later(house.now, -120), tempC: 90 },
    { pitId: pit, zone: 0, until: house.now, tempC: 122 },
    { pitId: pit, zone: 2, until: house.now, tempC: 118 },
  ]);
  house.now = later(house.now, 900);
  expect((await means()).get(pit)?.some(({ tempC }) => tempC === 300)).toBe(false);
});

it('a gateway whose clock is 45 minutes fast is corrected, and both times are kept', async () => {
  const fast = (seconds: number) => toIso(later(house.now, 45 * 60 - seconds));
  await send([{ probeId: fireEnd, tempC: 121, takenAt: fast(30) }], { sentAt: fast(0) }).expect(201);
  const [row] = await stored();
  expect(row?.taken_at.getTime()).toBe((house.now - 30) * 1000);
  expect(row?.device_taken_at.getTime()).toBe((house.now - 30 + 45 * 60) * 1000);
  expect((await send([{ probeId: fireEnd, tempC: 121, takenAt: fast(30) }], { sentAt: fast(-9) }).expect(201)).body).toEqual({ kept: 0, repeated: 1 });
});
