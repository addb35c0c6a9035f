import { later, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Food, FoodModule } from './index.js';

let house: TestHouse;
const pitId = randomUUID() as PitId;
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const cooks = () => house.app.get(Food).cooks(house.database.manager, house.yardId, house.now);
const cookOf = (more: object = {}) => ({ id: randomUUID(), cut: 'Brisket', shape: 'slab', pieces: 6, weightKg: 36, serviceId: null, comesOffAt: null, ...more });

beforeAll(async () => {
  house = await openTestHouse([FoodModule]);
  await post('/pits', {
    pit: {
      id: pitId, name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
      fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 0.7 }, { lengthM: 0.7 }, { lengthM: 0.7 }], probes: [],
      band: { lowC: 118, highC: 124 }, retired: false,
    },
  }).expect(201);
});
afterAll(() => house.close());

it('a cook lies where it was put, is on since then, and where it lay before stays on record', async () => {
  const cook = cookOf();
  await post('/cooks', { cook }).expect(201);
  const onAt = toIso(house.now);
  await post('/placements', { cookId: cook.id, lies: [{ pitId, zone: 1, pieces: 4 }, { pitId, zone: 2, pieces: 2 }] }).expect(201);
  house.now = later(house.now, 3600);
  await post('/placements', { cookId: cook.id, lies: [{ pitId, zone: 2, pieces: 6 }] }).expect(201);
  const [one] = (await cooks()).filter(({ id }) => id === cook.id);
  expect(one).toMatchObject({ onAt, lies: [{ pitId, zone: 2, pieces: 6 }] });
  expect(await house.database.query('select count(*)::int as n from placement where cook_id = $1', [cook.id])).toEqual([{ n: 3 }]);
  expect((await house.app.get(Food).loads(house.database.manager, house.yardId)).get(pitId)).toBeCloseTo(36 / 113.143, 4);
  await post(`/cooks/${cook.id}/off`, { offAt: toIso(house.now), yieldKg: 21 }).expect(201);
  expect((await cooks()).find(({ id }) => id === cook.id)).toMatchObject({ offAt: toIso(house.now), yieldKg: 21, lies: [] });
  expect((await post('/placements', { cookId: cook.id, lies: [] }).expect(409)).body.code).toBe('cook-is-off');
  expect((await post('/cooks', { cook }).expect(409)).body.code).toBe('cook-is-off');
});

it.each([
  { what: 'a seventh piece', lies: () => [{ pitId, zone: 0, pieces: 7 }], status: 409, code: 'pieces-more-than-cook' },
  { what: 'a fourth zone', lies: () => [{ pitId, zone: 3, pieces: 1 }], status: 409, code: 'zone-unknown' },
  { what: 'a pit that is not there', lies: () => [{ pitId: randomUUID(), zone: 0, pieces: 1 }], status: 404, code: 'pit-unknown' },
])('$what is refused with $code', async ({ lies, status, code }) => {
  const cook = cookOf();
  await post('/cooks', { cook }).expect(201);
  expect((await post('/placements', { cookId: cook.id, lies: lies() }).expect(status)).body.code).toBe(code);
});

it('a cook of no weight, an unknown cook and an unknown service are refused', async () => {
  expect((await post('/cooks', { cook: cookOf({ weightKg: 0 }) }).expect(400)).body.fields[0].path).toBe('cook.weightKg');
  expect((await post('/cooks', { cook: cookOf({ mix: [{ species: 'cardboard', leastFrac: 0.5, mostFrac: 1 }] }) }).expect(400)).body.fields[0].path).toBe('cook.mix.0.species');
  expect((await post('/placements', { cookId: randomUUID(), lies: [] }).expect(404)).body.code).toBe('cook-unknown');
  expect((await post('/cooks', { cook: cookOf({ serviceId: randomUUID() }) }).expect(404)).body.code).toBe('service-unknown');
});

it('fewer pieces than lie on the pits are refused', async () => {
  const cook = cookOf();
  await post('/cooks', { cook }).expect(201);
  await post('/placements', { cookId: cook.id, lies: [{ pitId, zone: 0, pieces: 5 }] }).expect(201);
  expect((await post('/cooks', { cook: { ...cook, pieces: 4 } }).expect(409)).body.code).toBe('pieces-more-than-cook');
});

it('a service in the past is refused, one to come is kept once', async () => {
  const service = { id: randomUUID(), name: 'Lunch', readyBy: toIso(later(house.now, -60)), portions: 80 };
  expect((await post('/services', { service }).expect(409)).body.code).toBe('service-in-the-past');
  const key = randomUUID();
  const command = { key, service: { ...service, readyBy: toIso(later(house.now, 36_000)) } };
  await post('/services', command).expect(201);
  await post('/services', command).expect(201);
  expect(await house.app.get(Food).services(house.database.manager, house.yardId, house.now)).toEqual([command.service]);
});

it('the kitchen\'s wish of wood is kept with its cook; one that no fire can be fed with is refused, and the wish before stays', async () => {
  const mix = [{ species: 'shagbark-hickory', leastFrac: 0.5, mostFrac: 1 }, { species: 'apple', leastFrac: 0.25, mostFrac: 0.5 }];
  const cook = cookOf({ mix });
  const kept = async () => ((await house.database.query('select mix from cook where id = $1', [cook.id])) as { mix: object }[])[0]?.mix;
  await post('/cooks', { cook }).expect(201);
  expect(await kept()).toEqual(mix);
  for (const wrong of [[mix[0], mix[0]], [{ ...mix[0], leastFrac: 0.9, mostFrac: 0.2 }], [{ ...mix[0], leastFrac: 0.8 }, { ...mix[1], leastFrac: 0.3 }]]) {
    expect((await post('/cooks', { cook: { ...cook, mix: wrong } }).expect(409)).body.code).toBe('mix-impossible');
  }
  expect(await kept()).toEqual(mix);
});
