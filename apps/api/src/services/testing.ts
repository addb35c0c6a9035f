import { type CookId, HOUR_S, later, type LotId, type PitId, randomStream, type ServiceId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Wood } from '../wood/index.js';
import { ServicesModule } from './index.js';

/** A yard after two days in which cooks went on, moved and came off, fires were fed, and a stack was counted. */
export interface TwoDays {
  readonly house: TestHouse;
  readonly lots: readonly LotId[];
  readonly services: readonly ServiceId[];
  readonly cooks: readonly CookId[];
  readonly post: (path: string, body: object) => request.Test;
}
export const LOT_PIECES = 97;
export const lotPriceCents = (nth: number): number => 9_973 + nth * 1_111;
const ids = <T extends string>(n: number) => Array.from({ length: n }, () => randomUUID() as string as T);

/** Two pits, three lots, four meals of two cooks each, drawn from a seed. */
export async function openTwoDays(seed: number, before: (days: TwoDays) => Promise<void> = async () => undefined): Promise<TwoDays> {
  const house = await openTestHouse([ServicesModule]);
  const pits = ids<PitId>(2);
  const days: TwoDays = {
    house, lots: ids<LotId>(3), services: ids<ServiceId>(4), cooks: ids<CookId>(8),
    post: (path, body) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body }),
  };
  await standUp(days, pits);
  await before(days);
  await play(days, pits, seed);
  return days;
}

async function standUp({ house, lots, services, cooks, post }: TwoDays, pits: readonly PitId[]): Promise<void> {
  for (const [nth, id] of pits.entries()) {
    await post('/pits', {
      pit: {
        id, name: `Pit ${nth}`, xM: 3 + nth * 6, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
        fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }, { lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
      },
    }).expect(201);
  }
  for (const [nth, id] of lots.entries()) {
    const lot = { id, name: `Lot ${nth}`, species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: toIso(later(house.now, -86_400)), priceCents: lotPriceCents(nth) };
    await post('/lots', { lot, pieces: LOT_PIECES }).expect(201);
    for (const pitId of pits) await post('/wood-moves', { lotId: id, pitId, pieces: 45, way: 'pull' }).expect(201);
  }
  for (const [nth, id] of services.entries()) await post('/services', { service: { id, name: `Meal ${nth}`, readyBy: toIso(later(house.now, (14 + nth * 11) * HOUR_S + 1234)), portions: 50 } }).expect(201);
  for (const [nth, id] of cooks.entries()) {
    await post('/cooks', { cook: { id, cut: `Cut ${nth}`, shape: 'slab', pieces: 4, weightKg: 7.3 + nth * 3.1, comesOffAt: null, serviceId: services[nth % 4] } }).expect(201);
  }
}

async function play({ house, lots, cooks, post }: TwoDays, pits: readonly PitId[], seed: number): Promise<void> {
  const random = randomStream(seed);
  const some = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
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
