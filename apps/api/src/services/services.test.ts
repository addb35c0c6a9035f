import { later, type LotId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Wood } from '../wood/index.js';
import { ServicesModule } from './index.js';

let house: TestHouse;
const ids = { pit: randomUUID() as PitId, lot: randomUUID() as LotId, lunch: randomUUID(), supper: randomUUID(), brisket: randomUUID(), ribs: randomUUID() };
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const cost = async (id: string) => (await request(house.app.getHttpServer()).get(`/api/services/${id}/cost`).expect(200)).body;

beforeAll(async () => {
  house = await openTestHouse([ServicesModule]);
  const start = house.now;
  await post('/pits', {
    pit: {
      id: ids.pit, name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
      fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
    },
  }).expect(201);
  await post('/lots', {
    lot: { id: ids.lot, name: 'Oak', species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(start, -86_400)), priceCents: 10_000 }, pieces: 100,
  }).expect(201);
  await post('/wood-moves', { lotId: ids.lot, pitId: ids.pit, pieces: 40, way: 'pull' }).expect(201);
  for (const [id, name] of [[ids.lunch, 'Lunch'], [ids.supper, 'Supper']]) {
    await post('/services', { service: { id, name, readyBy: toIso(later(start, 14 * 3600)), portions: 50 } }).expect(201);
  }
  const cook = { shape: 'slab', pieces: 3, comesOffAt: null };
  await post('/cooks', { cook: { ...cook, id: ids.brisket, cut: 'Brisket', weightKg: 30, serviceId: ids.lunch } }).expect(201);
  await post('/cooks', { cook: { ...cook, id: ids.ribs, cut: 'Ribs', weightKg: 10, serviceId: ids.supper } }).expect(201);
  await post('/shifts', {
    id: randomUUID(), startsAt: toIso(start), endsAt: toIso(later(start, 10 * 3600)),
    people: [{ personId: house.actor!.person!.id, startsAt: toIso(start), endsAt: toIso(later(start, 10 * 3600)), breaks: [] }],
    pits: [{ pitId: ids.pit, band: { lowC: 118, highC: 124 }, lightAt: toIso(start) }],
  }).expect(201);
  for (const id of [ids.brisket, ids.ribs]) await post('/placements', { cookId: id, lies: [{ pitId: ids.pit, zone: 0, pieces: 3 }] }).expect(201);
  house.now = later(start, 4 * 3600);
  await house.database.transaction((em) =>
    house.app.get(Wood).burn({ em, yardId: house.yardId, now: house.now, tell: () => undefined } as never, { pitId: ids.pit, checkId: null as never, splits: 8, at: later(start, 3600), by: null, deviceId: null }),
  );
});
afterAll(() => house.close());

it('two services share one fire by the weight of what they cook, to the cent', async () => {
  const lunch = await cost(ids.lunch);
  const supper = await cost(ids.supper);
  // by hand: 8 splits at 100 cents, 30 kg to 10 kg; 4 h at 31.00 an hour, likewise
  expect(lunch).toMatchObject({ woodCents: 600, crewCents: 9_300, totalCents: 9_900, perPortionCents: 198, perKgCents: 330 });
  expect(supper).toMatchObject({ woodCents: 200, crewCents: 3_100, totalCents: 3_300 });
  expect(lunch.wood).toEqual([{ lot: 'Oak', splits: 6, massKg: expect.any(Number), costCents: 600 }]);
  expect(lunch.crew).toEqual([{ person: 'Renske', workedS: 10_800, costCents: 9_300 }]);
  expect(lunch.cooks).toMatchObject([{ cook: { cut: 'Brisket' }, woodCents: 600, crewCents: 9_300 }]);
});

it('a service that is not there is named so', async () => {
  const { body } = await request(house.app.getHttpServer()).get(`/api/services/${randomUUID()}/cost`).expect(404);
  expect(body.code).toBe('service-unknown');
});
