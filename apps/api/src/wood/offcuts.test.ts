import { later, type LotId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Offcuts, Wood, WoodModule, WoodStore } from './index.js';

let house: TestHouse;
const pitId = randomUUID() as PitId;
const lots = { long: randomUUID() as LotId, double: randomUUID() as LotId, oak: randomUUID() as LotId };
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const lot = async (id: LotId) => (await house.app.get(WoodStore).lots(house.database.manager, house.yardId)).find((one) => one.id === id)!;
const onCart = async (id: LotId) => (await house.app.get(WoodStore).carts(house.database.manager, house.yardId)).find(({ lotId }) => lotId === id);
const inDeed = <T>(work: (deed: never) => Promise<T>) => house.database.transaction((em) => work({ em, yardId: house.yardId, now: house.now, tell: () => undefined } as never));

beforeAll(async () => {
  house = await openTestHouse([WoodModule]);
  await post('/pits', {
    pit: {
      id: pitId, name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
      fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
    },
  }).expect(201);
  // Of a box 0.61 m wide, 0.427 m lies across (0.7) and 0.354 m is best (0.58): 0.5 m gives one piece and an offcut, 0.72 m two halves of 0.357 m.
  for (const [id, name, lengthM] of [[lots.long, 'Long', 0.5], [lots.double, 'Double', 0.72], [lots.oak, 'Oak', 0.36]] as const) {
    await post('/lots', { lot: { id, name, species: 'white-oak', lengthM, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(house.now, -86_400)), priceCents: 9_000 }, pieces: 60 }).expect(201);
    await post('/wood-moves', { lotId: id, pitId, pieces: 10, way: 'pull' }).expect(201);
  }
});
afterAll(() => house.close());

it('four long splits trimmed: as many pieces on the cart, four of them trimmed, four offcuts; the same key again cuts nothing', async () => {
  const key = randomUUID();
  const { body } = await post('/trims', { key, lotId: lots.long, pitId, splits: 4 }).expect(201);
  expect(body).toEqual({ lotId: lots.long, onCart: 10, trimmed: 4, cuts: 4, offcuts: 4 });
  expect((await post('/trims', { key, lotId: lots.long, pitId, splits: 4 }).expect(201)).body).toEqual(body);
  expect(await lot(lots.long)).toMatchObject({ offcuts: 4, onCarts: 10 });
});

it('three splits of twice the length become six, without an offcut', async () => {
  expect((await post('/trims', { lotId: lots.double, pitId, splits: 3 }).expect(201)).body).toMatchObject({ onCart: 13, trimmed: 6, cuts: 3, offcuts: 0 });
  // 63 pieces share the price of 60 from now on.
  expect(await lot(lots.double)).toMatchObject({ boughtPieces: 60, lost: -3 });
});

it('no more is trimmed than lies there untrimmed, and wood that lies across needs no saw', async () => {
  expect((await post('/trims', { lotId: lots.long, pitId, splits: 7 }).expect(409)).body).toMatchObject({ code: 'cart-empty', values: { left: 6 } });
  expect((await post('/trims', { lotId: lots.oak, pitId, splits: 1 }).expect(409)).body.code).toBe('lies-as-it-is');
  expect((await post('/trims', { lotId: randomUUID(), pitId, splits: 1 }).expect(404)).body.code).toBe('lot-unknown');
});

it('trimmed splits burn first, and what goes back to the stack is long yet', async () => {
  await inDeed((deed) => house.app.get(Wood).burn(deed, { pitId, checkId: null as never, splits: 1, lotId: lots.long, at: house.now, by: null, deviceId: null }));
  expect(await onCart(lots.long)).toMatchObject({ pieces: 9, trimmed: 3 });
  await post('/wood-moves', { lotId: lots.long, pitId, pieces: 5, way: 'bring-back' }).expect(201);
  expect(await onCart(lots.long)).toMatchObject({ pieces: 4, trimmed: 3 });
});

it('offcuts go on at lighting and at a check, and none is invented', async () => {
  expect((await post('/offcuts', { pitId, pieces: 1 }).expect(201)).body).toEqual({ left: 3, open: 0 });
  expect(await inDeed((deed) => house.app.get(Offcuts).burn(deed, { pitId, pieces: 2, at: house.now, by: null }))).toEqual({ lotId: lots.long, open: 0 });
  expect((await post('/offcuts', { pitId, pieces: 5 }).expect(201)).body).toEqual({ left: 0, open: 4 });
  expect((await lot(lots.long)).offcuts).toBe(0);
});

it('a count of offcuts is kept with its reason; who counted while somebody cut is told so', async () => {
  expect((await post('/offcut-recounts', { lotId: lots.long, found: 7, reason: 'lay behind the shed', book: 0 }).expect(201)).body).toEqual({ lotId: lots.long, offcuts: 7 });
  expect((await post('/offcut-recounts', { lotId: lots.long, found: 6, reason: 'counted', book: 0 }).expect(409)).body).toMatchObject({ code: 'counted-meanwhile', values: { before: 0, now: 7 } });
  await post('/offcut-recounts', { lotId: lots.long, found: -1, reason: 'x' }).expect(400);
});

it('what is kept of offcuts and of trimmed splits is the sum of their ledgers', async () => {
  const offcuts = (await house.database.query('select lot_id, sum(pieces)::int as pieces from offcut_move group by lot_id')) as { lot_id: LotId; pieces: number }[];
  for (const id of Object.values(lots)) expect((await lot(id)).offcuts).toBe(offcuts.find(({ lot_id }) => lot_id === id)?.pieces ?? 0);
  const trimmed = (await house.database.query('select lot_id, sum(trimmed_pieces)::int as trimmed, sum(cart_pieces)::int as pieces from wood_move where pit_id is not null group by lot_id')) as { lot_id: LotId; trimmed: number; pieces: number }[];
  for (const { lot_id, ...sums } of trimmed) expect(await onCart(lot_id)).toMatchObject(sums);
});
