import type { ServiceCost } from '@stokehold/domain/contract';
import { costSheet } from '@stokehold/domain/cost';
import { cents, type CookId, type EpochS, HOUR_S, later, type LotId, type PitId, type ServiceId } from '@stokehold/domain/quantity';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { TestHouse } from '../platform/testing.js';
import { Services } from './index.js';
import { LOT_PIECES, lotPriceCents, openTwoDays } from './testing.js';

// The sheets and the weeks, which are made from sums, held to the ledger: every split by itself, priced by the entries before it.

let house: TestHouse;
let lots: readonly LotId[];
let services: readonly ServiceId[];
const NIGHT_BEFORE_S = 20 * HOUR_S;

interface Entry { readonly lot_id: LotId; readonly pit_id: PitId; readonly kind: string; readonly gone: number; readonly at: EpochS }
const entries = (): Promise<Entry[]> => house.database.query('select lot_id, pit_id, kind, -(stack_pieces + cart_pieces) as gone, extract(epoch from moved_at)::float8 as at from wood_move');
const sum = (all: readonly Entry[]) => all.reduce((total, { gone }) => total + gone, 0);

beforeAll(async () => {
  ({ house, lots, services } = await openTwoDays(77));
});
afterAll(() => house.close());

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
      lotId, priceCents: cents(lotPriceCents(nth)), boughtPieces: LOT_PIECES, lostPieces: sum(all.filter((one) => one.lot_id === lotId && (one.kind === 'recounted' || one.kind === 'trimmed'))),
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
