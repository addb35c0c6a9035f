import type { ServiceCost } from '@stokehold/domain/contract';
import { costSheet } from '@stokehold/domain/cost';
import { cents, type CookId, type EpochS, HOUR_S, later, type LotId, type PitId, randomStream, type ServiceId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Wood } from '../wood/index.js';
import { Services, ServicesModule } from './index.js';

// The sheets and the weeks, which are made from sums, held to the ledger: every split by itself, priced by the entries before it.

let house: TestHouse;
const random = randomStream(77);
const some = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
const ids = <T extends string>(n: number) => Array.from({ length: n }, () => randomUUID() as string as T);
const [pits, lots, services, cooks] = [ids<PitId>(2), ids<LotId>(3), ids<ServiceId>(4), ids<CookId>(8)];
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const NIGHT_BEFORE_S = 20 * HOUR_S;

interface Entry { readonly lot_id: LotId; readonly pit_id: PitId; readonly kind: string; readonly gone: number; readonly at: EpochS }
const entries = (): Promise<Entry[]> => house.database.query('select lot_id, pit_id, kind, -(stack_pieces + cart_pieces) as gone, extract(epoch from moved_at)::float8 as at from wood_move');
const sum = (all: readonly Entry[]) => all.reduce((total, { gone }) => total + gone, 0);

beforeAll(async () => {
  house = await openTestHouse([ServicesModule]);
  for (const [nth, id] of pits.entries()) {
    await post('/pits', {
      pit: {
        id, name: `Pit ${nth}`, xM: 3 + nth * 6, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
        fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }, { lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
      },
    }).expect(201);
  }
  for (const [nth, id] of lots.entries()) {
    const lot = { id, name: `Lot ${nth}`, species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(house.now, -86_400)), priceCents: 9_973 + nth * 1_111 };
    await post('/lots', { lot, pieces: 97 }).expect(201);
    for (const pitId of pits) await post('/wood-moves', { lotId: id, pitId, pieces: 45, way: 'pull' }).expect(201);
  }
  for (const [nth, id] of services.entries()) await post('/services', { service: { id, name: `Meal ${nth}`, readyBy: toIso(later(house.now, (14 + nth * 11) * HOUR_S + 1234)), portions: 50 } }).expect(201);
  for (const [nth, id] of cooks.entries()) {
    await post('/cooks', { cook: { id, cut: `Cut ${nth}`, shape: 'slab', pieces: 4, weightKg: 7.3 + nth * 3.1, comesOffAt: null, serviceId: services[nth % 4] } }).expect(201);
  }
  await nights();
});
afterAll(() => house.close());

/** Two days in which cooks go on, move and come off, fires are fed, and a stack is counted. */
async function nights(): Promise<void> {
  for (let nth = 0; nth < 110; nth += 1) {
    house.now = later(house.now, 1557);
    const draw = random.next();
    if (draw < 0.2) await post('/placements', { cookId: some(cooks), lies: [{ pitId: some(pits), zone: random.below(2), pieces: 4 }] });
    else if (draw < 0.23) await post(`/cooks/${some(cooks)}/off`, { offAt: toIso(house.now), yieldKg: 4 });
    else if (nth === 60) await post('/recounts', { lotId: lots[0], pitId: null, found: 2, reason: 'the foot was rotten' }).expect(201);
    else {
      await house.database.transaction((em) => house.app.get(Wood).burn(
        { em, yardId: house.yardId, now: house.now, tell: () => undefined } as never,
        { pitId: some(pits), checkId: null as never, splits: 1 + random.below(2), lotId: some(lots), at: later(house.now, -random.below(5000)), by: null, deviceId: null },
      ));
    }
  }
}

/** Wood of each cook of a service, in cents, from every entry of the ledger by itself. */
async function fromLedger(serviceId: ServiceId): Promise<ReadonlyMap<CookId, number>> {
  const [{ ready }] = (await house.database.query('select extract(epoch from ready_by)::float8 as ready from service where id = $1', [serviceId])) as [{ ready: EpochS }];
  const span = { from: later(ready, -NIGHT_BEFORE_S), until: Math.min(ready, house.now) as EpochS };
  const all = await entries();
  const burned = all.filter(({ kind }) => kind === 'burned');
  const lays = (await house.database.query(
    `select cook_id as "cookId", pit_id as "pitId", placement.pieces * weight_kg / cook.pieces as "weightKg", extract(epoch from from_at)::float8 as "from", coalesce(extract(epoch from until_at)::float8, $1) as until
     from placement join cook on cook.id = cook_id order by from_at, cook_id, pit_id, zone_nth`, [span.until],
  )) as Parameters<typeof costSheet>[0]['stays'];
  const sheet = costSheet({
    stays: lays.filter(({ from, until }) => from < span.until && until > span.from), paid: [], cooks: [],
    burned: burned.filter(({ at }) => at >= span.from && at <= span.until).sort((a, b) => a.at - b.at).map(({ lot_id, pit_id, gone, at }) => ({ lotId: lot_id, pitId: pit_id, pieces: gone, at })),
    lots: lots.map((lotId, nth) => ({
      lotId, priceCents: cents(9_973 + nth * 1_111), boughtPieces: 97, lostPieces: sum(all.filter((one) => one.lot_id === lotId && (one.kind === 'recounted' || one.kind === 'trimmed'))),
      burnedBefore: sum(burned.filter((one) => one.lot_id === lotId && one.at < span.from)),
    })),
  });
  const own = (await house.database.query('select id from cook where service_id = $1', [serviceId])) as { id: CookId }[];
  return new Map(own.map(({ id }) => [id, sheet.wood.filter(({ cookId }) => cookId === id).reduce((total, { costCents }) => total + costCents, 0)]));
}
const costOf = (id: ServiceId): Promise<ServiceCost> => house.app.get(Services).cost(house, id);

it.each([0, 1, 2, 3])('the sheet of meal %d is that of the ledger, split by split, to the cent', async (nth) => {
  const sheet = await costOf(services[nth]!);
  const ledger = await fromLedger(services[nth]!);
  expect(sheet.cooks).toHaveLength(2);
  for (const { cook, woodCents } of sheet.cooks) expect(woodCents).toBe(ledger.get(cook.id as CookId));
});

it('a line of the weeks is its sheet, to the cent', async () => {
  const weeks = await house.app.get(Services).costs(house, later(house.now, -30 * 86_400));
  expect(weeks).toHaveLength(4);
  expect(weeks.some(({ woodCents }) => woodCents > 0)).toBe(true);
  for (const { id, woodCents, crewCents, meatCents, totalCents } of weeks) {
    const sheet = await costOf(id as ServiceId);
    expect({ woodCents, crewCents, meatCents, totalCents }).toEqual({ woodCents: sheet.woodCents, crewCents: sheet.crewCents, meatCents: sheet.meatCents, totalCents: sheet.totalCents });
  }
});
