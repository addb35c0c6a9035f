import { later, type LotId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Wood, WoodModule, WoodViews } from './index.js';

let house: TestHouse;
const pitId = randomUUID() as PitId;
const oak = randomUUID() as LotId;
const ash = randomUUID() as LotId;
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const lot = (id: LotId, name: string, more: object = {}) => ({
  lot: { id, name, species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(house.now, -86_400)), priceCents: 9_000, ...more },
  pieces: 60,
});
const view = () => house.app.get(WoodViews).view(house.database.manager, house.yardId, house.now, new Map());
const stock = async (id: LotId) => (await view()).lots.find((one) => one.id === id)!;
const entries = async () => Number(((await house.database.query('select count(*) as n from wood_move')) as { n: string }[])[0]!.n);

beforeAll(async () => {
  house = await openTestHouse([WoodModule]);
  await post('/pits', {
    pit: {
      id: pitId, name: 'Bess', xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
      fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
    },
  }).expect(201);
  await post('/lots', lot(oak, 'Oak')).expect(201);
  await post('/lots', lot(ash, 'Ash', { species: 'white-ash' })).expect(201);
});
afterAll(() => house.close());

it('a lot that was bought lies in the stack, with what a piece weighs, holds and costs', async () => {
  const one = await stock(oak);
  expect(one).toMatchObject({ inStack: 60, onCarts: 0, burned: 0, boughtPieces: 60, pieceCostCents: 150 });
  expect(one.fits).toEqual([{ pitId, lies: 'across' }]);
  // by hand: 0.78 x 0.09^2 x 0.36 m3 x about 665 kg/m3 dry x 1.14
  expect(one.pieceKg).toBeGreaterThan(1.6);
  expect(one.pieceKg).toBeLessThan(1.85);
});

it('splits pulled leave the stack for the cart; the same key again moves nothing', async () => {
  const move = { key: randomUUID(), lotId: oak, pitId, pieces: 10, way: 'pull' };
  const { body } = await post('/wood-moves', move).expect(201);
  expect(body).toEqual({ lotId: oak, inStack: 50, onCart: 10 });
  expect((await post('/wood-moves', move).expect(201)).body).toEqual(body);
  expect(await stock(oak)).toMatchObject({ inStack: 50, onCarts: 10 });
});

it.each([
  { what: 'more than the stack holds', move: () => ({ lotId: oak, pitId, pieces: 51, way: 'pull' }), status: 409, code: 'lot-empty' },
  { what: 'more than the cart holds', move: () => ({ lotId: oak, pitId, pieces: 11, way: 'bring-back' }), status: 409, code: 'cart-empty' },
  { what: 'a lot that is not there', move: () => ({ lotId: randomUUID(), pitId, pieces: 1, way: 'pull' }), status: 404, code: 'lot-unknown' },
  { what: 'a pit that is not there', move: () => ({ lotId: oak, pitId: randomUUID(), pieces: 1, way: 'pull' }), status: 404, code: 'pit-unknown' },
  { what: 'no pieces', move: () => ({ lotId: oak, pitId, pieces: 0, way: 'pull' }), status: 400, code: 'input-invalid' },
])('$what is refused with $code, and nothing moves', async ({ move, status, code }) => {
  const before = await entries();
  expect((await post('/wood-moves', move()).expect(status)).body.code).toBe(code);
  expect(await entries()).toBe(before);
});

it('a moisture of 140 % is refused at the field, a meter reading becomes the lot\'s', async () => {
  const { body } = await post(`/lots/${oak}/moisture`, { moisture: 1.4, measuredAt: toIso(house.now) }).expect(400);
  expect(body.fields[0].path).toBe('moisture');
  await post(`/lots/${oak}/moisture`, { moisture: 0.17, measuredAt: toIso(house.now) }).expect(201);
  await post(`/lots/${oak}/moisture`, { moisture: 0.3, measuredAt: toIso(later(house.now, -3600)) }).expect(201);
  expect((await stock(oak)).moisture).toBe(0.17); // the later reading, though it arrived first
});

it('a second lot of the same name is refused', async () => {
  expect((await post('/lots', lot(randomUUID() as LotId, 'oak')).expect(409)).body.code).toBe('name-taken');
});

it('splits are taken from the lot on top of the cart, then from the next, and what is not there comes back as short', async () => {
  house.now = later(house.now, 60);
  await post('/wood-moves', { lotId: ash, pitId, pieces: 3, way: 'pull' }).expect(201);
  const wood = house.app.get(Wood);
  expect(await wood.topOfCart(house.database.manager, house.yardId, pitId)).toMatchObject({ id: ash, onCart: 13 });
  const burn = (splits: number) =>
    house.database.transaction((em) =>
      wood.burn({ em, yardId: house.yardId, now: house.now, tell: () => undefined } as never, { pitId, checkId: null as never, splits, at: house.now, by: null, deviceId: null }),
    );
  expect(await burn(4)).toEqual({ lotId: ash, short: 0 }); // three of ash, one of oak
  expect(await stock(ash)).toMatchObject({ onCarts: 0, burned: 3 });
  expect(await stock(oak)).toMatchObject({ onCarts: 9, burned: 1 });
  expect(await burn(12)).toEqual({ lotId: oak, short: 3 });
  expect(await burn(1)).toMatchObject({ short: 1 });
});

it('a recount sets what lies there and keeps the difference with its reason', async () => {
  const { body } = await post('/recounts', { lotId: ash, pitId: null, found: 55, reason: 'two were rotten' }).expect(201);
  expect(body).toMatchObject({ inStack: 55 });
  expect(await stock(ash)).toMatchObject({ inStack: 55 });
  const [entry] = (await house.database.query(`select stack_pieces, reason from wood_move where kind = 'recounted'`)) as object[];
  expect(entry).toEqual({ stack_pieces: -2, reason: 'two were rotten' });
});

it('two people who pull the last splits at once: one gets them, the other is told', async () => {
  const last = randomUUID() as LotId;
  await post('/lots', { ...lot(last, 'Last row'), pieces: 8 }).expect(201);
  const answers = await Promise.all([1, 2].map(() => post('/wood-moves', { lotId: last, pitId, pieces: 8, way: 'pull' })));
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
  expect(await stock(last)).toMatchObject({ inStack: 0, onCarts: 8 });
});
