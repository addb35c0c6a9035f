import { type EpochS, later, type LotId, type PitId, randomStream, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Wood, WoodModule, WoodStore } from './index.js';

// The sums that are kept beside the ledger, held to the ledger itself: added up here from its entries, one by one, in the test.

let house: TestHouse;
const pits = [randomUUID(), randomUUID()] as PitId[];
const lots = [randomUUID(), randomUUID(), randomUUID()] as LotId[];
const random = randomStream(20_270_115);
const some = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });

interface Entry { lot_id: LotId; pit_id: PitId | null; kind: string; stack_pieces: number; cart_pieces: number; moved_s: number }
const ledger = (): Promise<Entry[]> => house.database.query('select lot_id, pit_id, kind, stack_pieces, cart_pieces, extract(epoch from moved_at)::float8 as moved_s from wood_move');
const sum = (entries: readonly Entry[], of: (entry: Entry) => number) => entries.reduce((all, entry) => all + of(entry), 0);
const gone = ({ stack_pieces, cart_pieces }: Entry) => -stack_pieces - cart_pieces;

beforeAll(async () => {
  house = await openTestHouse([WoodModule]);
  for (const [nth, id] of pits.entries()) {
    await post('/pits', {
      pit: {
        id, name: `Pit ${nth}`, xM: 3 + 6 * nth, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
        fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
      },
    }).expect(201);
  }
  for (const [nth, id] of lots.entries()) {
    const lot = { id, name: `Lot ${nth}`, species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(house.now, -86_400)), priceCents: 9_000 };
    await post('/lots', { lot, pieces: 60 }).expect(201);
  }
});
afterAll(() => house.close());

const burn = (at: EpochS) =>
  house.database.transaction((em) => house.app.get(Wood).burn(
    { em, yardId: house.yardId, now: house.now, tell: () => undefined } as never,
    { pitId: some(pits), checkId: null as never, splits: 1 + random.below(3), lotId: some(lots), at, by: null, deviceId: null },
  ));

/** Three days of pulls, bringing back, fires and counts, as they come; what is refused changes nothing. */
async function threeDays(): Promise<void> {
  for (let nth = 0; nth < 90; nth += 1) {
    house.now = later(house.now, 2880);
    const draw = random.next();
    const moved = { lotId: some(lots), pitId: some(pits), pieces: 1 + random.below(9) };
    if (draw < 0.35) await post('/wood-moves', { ...moved, way: 'pull' });
    else if (draw < 0.45) await post('/wood-moves', { ...moved, way: 'bring-back' });
    else if (draw < 0.55) await post('/recounts', { lotId: moved.lotId, pitId: random.next() < 0.5 ? moved.pitId : null, found: random.below(40), reason: 'counted' }).expect(201);
    // Some checks come in hours after they were made, across midnight too.
    else await burn(later(house.now, -random.below(12 * 3600)));
  }
}

it('three days of pulls, fires and corrections: every sum of every lot, cart and day is that of its entries', async () => {
  await threeDays();
  const entries = await ledger();
  expect(new Set(entries.map(({ kind }) => kind))).toEqual(new Set(['bought', 'pulled', 'brought-back', 'burned', 'recounted']));
  const store = house.app.get(WoodStore);
  const em = house.database.manager;
  for (const lot of await store.lots(em, house.yardId)) {
    const own = entries.filter(({ lot_id }) => lot_id === lot.id);
    expect({ inStack: lot.inStack, onCarts: lot.onCarts, burned: lot.burned, lost: lot.lost }).toEqual({
      inStack: sum(own, ({ stack_pieces }) => stack_pieces), onCarts: sum(own, ({ cart_pieces }) => cart_pieces),
      burned: sum(own.filter(({ kind }) => kind === 'burned'), gone), lost: sum(own.filter(({ kind }) => kind === 'recounted'), gone),
    });
  }
  const onCarts = await store.carts(em, house.yardId);
  for (const pitId of pits) {
    for (const lotId of lots) {
      const own = entries.filter((entry) => entry.pit_id === pitId && entry.lot_id === lotId);
      expect(onCarts.find((one) => one.pitId === pitId && one.lotId === lotId)?.pieces ?? 0).toBe(sum(own, ({ cart_pieces }) => cart_pieces));
    }
  }
});

it('what was burned before an instant is what the ledger says, at midnight and between', async () => {
  const entries = (await ledger()).filter(({ kind }) => kind === 'burned');
  const [first, last] = [Math.min(...entries.map(({ moved_s }) => moved_s)), Math.max(...entries.map(({ moved_s }) => moved_s))];
  const midnights = [1, 2, 3].map((day) => Math.ceil(first / 86_400) * 86_400 + (day - 1) * 86_400);
  const between = Array.from({ length: 12 }, () => Math.floor(first + random.next() * (last - first)));
  for (const at of [first, last, last + 1, ...midnights, ...between] as EpochS[]) {
    const burned = await house.app.get(WoodStore).burnedBefore(house.database.manager, house.yardId, at);
    for (const lotId of lots) expect(burned.get(lotId) ?? 0).toBe(sum(entries.filter((entry) => entry.lot_id === lotId && entry.moved_s < at), gone));
  }
});
