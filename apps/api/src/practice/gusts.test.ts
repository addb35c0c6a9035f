import type { ServiceCost } from '@stokehold/domain/contract';
import { dryBasis, type EpochS, HOUR_S, later, type LotId, type PitId, type ServiceId } from '@stokehold/domain/quantity';
import { dryMassKg, netHeatJPerDryKg } from '@stokehold/domain/wood';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { AppModule } from '../app.module.js';
import { openTestHouseOf, type OpenedHouse } from '../platform/testing.js';
import { Services } from '../services/index.js';
import { WoodStore } from '../wood/index.js';
import { type PracticeNight, PracticeNights, readSample, type SampleNight } from './index.js';

// The wood of a night with five hours of gusts: the pull is balanced again, its hauls are done, no cart runs out, and the sheet of the
// service says what the wind cost.

const file = fileURLToPath(new URL('../../../../infra/sample/brackwater.json', import.meta.url));
const GUSTS_H = 5;

/** Heron's firebox end looks into the gusts, Marten's stack end. */
function gustyNight(): SampleNight {
  const sample = readSample(file);
  const stands = ({ pit }: { pit: string }) => ['Heron', 'Marten'].includes(pit);
  return {
    ...sample,
    pits: sample.pits.filter(({ name }) => stands({ pit: name })),
    people: sample.people.slice(0, 3).map((person) => ({ ...person, from: '17:00', to: '03:00', breaks: [] })),
    carts: sample.carts.filter(stands),
    cooks: sample.cooks.filter(({ lies }) => lies.every(stands)),
    shift: { ...sample.shift, to: '03:00' },
    truth: { ...sample.truth, gusts: [{ at: '20:00', minutes: GUSTS_H * 60, windMPerS: 9, fromDeg: 290 }], late: null },
  };
}

interface PullRow {
  readonly made_at: Date;
  readonly because: string;
  readonly loads: readonly { readonly pitId: PitId; readonly from: EpochS; readonly until: EpochS; readonly needJ: number }[];
  readonly changes: readonly { readonly pitId: PitId; readonly piecesBefore: number; readonly piecesAfter: number; readonly because: string }[];
  readonly task_ids: readonly string[];
}
interface BurnedRow { readonly lot_id: LotId; readonly pieces: number; readonly at: Date }

let house: OpenedHouse;
let night: PracticeNight;
const pitOf = (name: string): PitId => night.yard.pits.find((pit) => pit.name === name)!.id;
let gusts: { readonly from: EpochS; readonly until: EpochS };
let pulls: readonly PullRow[];
const ask = <T>(sql: string, given: readonly unknown[] = []) => house.database.query(sql, [...given]) as Promise<T[]>;

beforeAll(async () => {
  house = await openTestHouseOf((databaseUrl, dataFolder) => AppModule.on({ databaseUrl, workers: 0, connections: 4, dataFolder }));
  night = await house.app.get(PracticeNights).openStill(gustyNight(), 7);
  while (!night.isOver) await night.minute();
  const from = later(night.yard.startsAt, 3 * HOUR_S);
  gusts = { from, until: later(from, GUSTS_H * HOUR_S) };
  pulls = await ask<PullRow>('select made_at, because, loads, changes, task_ids from wood_pull order by made_at, is_current');
}, 600_000);
afterAll(() => house.close());

/** Dry wood of a pit between two instants: as the first pull planned it, and as it burned. */
async function woodOf(pitId: PitId, { from, until }: { readonly from: EpochS; readonly until: EpochS }): Promise<{ readonly plannedKg: number; readonly burnedKg: number }> {
  const needJ = pulls[0]!.loads.filter((load) => load.pitId === pitId).reduce((sum, load) => sum + (load.needJ * Math.max(0, Math.min(load.until, until) - Math.max(load.from, from))) / (load.until - load.from), 0);
  const burned = await ask<BurnedRow>(`select lot_id, -cart_pieces as pieces, moved_at as at from wood_move where kind = 'burned' and pit_id = $1`, [pitId]);
  const lots = await house.app.get(WoodStore).lots(house.database.manager, night.yard.yardId);
  const during = burned.filter(({ at }) => at.getTime() / 1000 >= from && at.getTime() / 1000 < until);
  return {
    plannedKg: needJ / netHeatJPerDryKg(dryBasis(0.12)),
    burnedKg: during.reduce((sum, { lot_id, pieces }) => sum + pieces * dryMassKg(lots.find(({ id }) => id === lot_id)!), 0),
  };
}
/** The first balance after the gusts rose in which a pit is told that it gets more, and that pit. */
function balanced(): { readonly madeAt: EpochS; readonly pitId: PitId } | undefined {
  const told = pulls.filter(({ made_at, because }) => made_at.getTime() / 1000 > gusts.from && because === 'runs-short').flatMap(({ made_at, changes }) =>
    changes.filter((change) => change.because === 'burns-more' && change.piecesAfter > change.piecesBefore).map(({ pitId }) => ({ madeAt: (made_at.getTime() / 1000) as EpochS, pitId })));
  return told[0];
}

it('the pull is made before the night begins', () => {
  expect(pulls[0]).toMatchObject({ because: 'asked', made_at: new Date(night.yard.startsAt * 1000) });
});

it('a pit in the gusts burns at least 30 % more than was planned for these hours', async () => {
  const { plannedKg, burnedKg } = await woodOf(pitOf('Marten'), gusts);
  expect(burnedKg / plannedKg).toBeGreaterThan(1.3);
});

it('the pull is balanced again, and says which pit burns more', () => {
  expect(balanced()).toBeDefined();
  expect(balanced()!.madeAt).toBeLessThan(gusts.until);
});

it('a haul of the balanced pull appears as a task of the night, somebody does it, and its wood comes to the cart', async () => {
  const { madeAt, pitId } = balanced()!;
  const ids = pulls.filter(({ made_at }) => made_at.getTime() / 1000 >= madeAt).flatMap(({ task_ids }) => task_ids);
  const [haul] = await ask<{ note: string; done_at: Date }>(`select note, done_at from task where id = any($1) and kind = 'haul' and pit_id = $2 and done_at > to_timestamp($3) order by done_at`, [ids, pitId, madeAt]);
  expect(haul?.note).toMatch(/^\d+ × /);
  const pulled = await ask(`select 1 from wood_move where kind = 'pulled' and pit_id = $1 and moved_at = $2`, [pitId, haul!.done_at]);
  expect(pulled.length).toBeGreaterThan(0);
});

it('no pit runs out: at every check its wood lay on the cart', async () => {
  expect(await ask(`select seen_at from fire_check where 'not-on-cart' = any(marks)`)).toEqual([]);
  const [{ checks }] = (await ask<{ checks: number }>('select count(*)::int as checks from fire_check where splits > 0')) as [{ checks: number }];
  expect(checks).toBeGreaterThan(20);
});

it('the cost sheet explains it: the gusts have their line, and the lines add up to the difference to the cent', async () => {
  const [service] = await ask<{ id: ServiceId }>(`select id from service where name = 'Market lunch'`);
  const cost: ServiceCost = await house.app.get(Services).cost(night.yard.lead, service!.id);
  const { plannedWoodCents, causes } = cost.against!;
  const wood = causes.filter(({ cause }) => cause !== 'more-hours' && cause !== 'dearer-hours');
  expect(wood.find(({ cause }) => cause === 'wind')!.cents).toBeGreaterThan(0);
  expect(plannedWoodCents + wood.reduce((sum, { cents }) => sum + cents, 0)).toBe(cost.woodCents);
  expect(cost.unpricedSplits).toBe(0);
});

it('the sheet names the pit, the gusts that blew onto it, and the splits that they took beyond the plan, as the ledger counts them', async () => {
  const [service] = await ask<{ id: ServiceId }>(`select id from service where name = 'Market lunch'`);
  const { against } = await house.app.get(Services).cost(night.yard.lead, service!.id);
  const marten = against!.pits.find(({ pit }) => pit === 'Marten')!;
  expect(marten.gusts).toMatchObject({ onto: 'stack' });
  // a change of the wind is told within five minutes, once it is large: about so far off may its gusts begin and end
  expect(Math.abs(marten.gusts!.lengthS - GUSTS_H * HOUR_S)).toBeLessThan(1800);
  const { plannedKg, burnedKg } = await woodOf(pitOf('Marten'), gusts);
  expect(Math.abs(marten.gusts!.splits / marten.gusts!.plannedSplits / (burnedKg / plannedKg) - 1)).toBeLessThan(0.25);
  expect(marten.gusts!.splits / marten.gusts!.plannedSplits).toBeGreaterThan(1.2);
  const [{ all }] = (await ask<{ all: number }>(`select -sum(cart_pieces)::int as all from wood_move where kind = 'burned' and pit_id = $1`, [pitOf('Marten')])) as [{ all: number }];
  expect(marten.splits).toBe(all);
});
