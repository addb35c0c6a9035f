import { later, type LotId, type PersonId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { ShiftsModule } from '../shifts/index.js';
import { WoodyardModule } from './index.js';

// A yard whose only dry wood is too long to lie across: what is pulled depends on who may saw.

let house: TestHouse;
const pitId = randomUUID() as PitId;
const lotId = randomUUID() as LotId;
const shiftId = randomUUID();
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const woodyard = async () => (await request(house.app.getHttpServer()).get('/api/woodyard').expect(200)).body;
const tasks = async () => (await house.database.query(`select kind, note, earliest_at, due_at, latest_at, length_s from task where kind in ('haul', 'trim') order by due_at, kind`)) as { kind: string; note: string; earliest_at: Date; due_at: Date; latest_at: Date; length_s: number }[];
const shift = (personId: PersonId) => {
  const hours = { startsAt: toIso(house.now), endsAt: toIso(later(house.now, 8 * 3600)) };
  return { id: shiftId, ...hours, people: [{ personId, ...hours, breaks: [] }], pits: [{ pitId, band: { lowC: 118, highC: 124 }, lightAt: toIso(house.now) }] };
};

beforeAll(async () => {
  house = await openTestHouse([WoodyardModule, ShiftsModule]);
  await post('/pits', {
    pit: {
      id: pitId, name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61, fireboxDiameterM: 0.61,
      steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }, { lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
    },
  }).expect(201);
  await post('/lots', { lot: { id: lotId, name: 'Long oak', species: 'white-oak', lengthM: 0.52, thicknessM: 0.09, moisture: 0.12, boughtAt: toIso(later(house.now, -86_400)), priceCents: 6000 }, pieces: 90 }).expect(201);
  await post('/shifts', shift(house.actor!.person!.id)).expect(201);
});
afterAll(() => house.close());

it('nobody on the shift may saw: no wood is pulled that would have to be trimmed, the shortage is owned up to, and the woodyard says why', async () => {
  const { body } = await post('/pulls', {}).expect(201);
  expect(body.loads.flatMap(({ wood }: { wood: object[] }) => wood)).toEqual([]);
  expect(body.loads.at(-1).shortJ).toBeGreaterThan(0);
  expect((await woodyard()).maySaw).toEqual([]);
  expect(await tasks()).toEqual([]);
});

it('somebody who may saw comes to the shift: the long wood is hauled, and cut by a task of its own, after the haul and before the fire wants it', async () => {
  await house.database.query(`insert into skill (crew_member_id, skill) values ($1, 'saw')`, [house.actor!.person!.id]);
  await post('/shifts', shift(house.actor!.person!.id)).expect(201);
  const { body } = await post('/pulls', {}).expect(201);
  const cuts = body.loads.flatMap(({ wood }: { wood: { cuts: number }[] }) => wood).reduce((sum: number, one: { cuts: number }) => sum + one.cuts, 0);
  expect(cuts).toBeGreaterThan(0);
  expect((await woodyard()).maySaw).toHaveLength(1);
  const all = await tasks();
  const [hauls, trims] = [all.filter(({ kind }) => kind === 'haul'), all.filter(({ kind }) => kind === 'trim')];
  expect(trims).toHaveLength(hauls.length);
  expect(trims.reduce((sum, { length_s }) => sum + length_s, 0)).toBe(300 * trims.length + 30 * cuts); // half a minute a cut, five minutes to set up
  trims.forEach(({ note, earliest_at }, nth) => {
    expect(note).toMatch(/^\d+ × Long oak$/);
    expect(earliest_at.getTime()).toBeGreaterThanOrEqual(hauls[nth]!.earliest_at.getTime() + 1000 * hauls[nth]!.length_s);
  });
});
