import { HOUR_S, later } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { writeFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, it } from 'vitest';
import { AppModule } from '../app.module.js';
import { openTestHouseOf, type OpenedHouse } from '../platform/testing.js';
import { Shifts } from '../shifts/index.js';
import { type NightReport, type PracticeNight, PracticeNights, readSample, type SampleNight } from './index.js';

const file = fileURLToPath(new URL('../../../../infra/sample/brackwater.json', import.meta.url));
const opened: OpenedHouse[] = [];
afterEach(async () => {
  for (const house of opened.splice(0)) await house.close();
});

/** The sample with two pits and three hours: enough to light, to look, to feed and to load. */
function shortNight(): SampleNight {
  const sample = readSample(file);
  const pits = sample.pits.slice(0, 2);
  const stands = ({ pit }: { pit: string }) => pits.some(({ name }) => name === pit);
  return {
    ...sample,
    pits,
    people: sample.people.slice(0, 3).map((person) => ({ ...person, to: '20:00', breaks: [{ lengthMin: 10, earliest: '18:20', latest: '19:10' }] })),
    carts: sample.carts.filter(stands),
    cooks: sample.cooks.filter(({ lies }) => lies.every(stands)),
    shift: { ...sample.shift, to: '20:00' },
    truth: { ...sample.truth, late: { person: 'Citlali', minutes: 20 } },
  };
}

async function openNight(sample: SampleNight, seed: number): Promise<PracticeNight> {
  const house = await openTestHouseOf((databaseUrl, dataFolder) => AppModule.on({ databaseUrl, workers: 0, connections: 4, dataFolder }));
  opened.push(house);
  return house.app.get(PracticeNights).openStill(sample, seed);
}

async function run(sample: SampleNight, seed: number): Promise<{ report: NightReport; house: OpenedHouse }> {
  const night = await openNight(sample, seed);
  while (!night.isOver) await night.minute();
  return { report: await night.report(), house: opened.at(-1)! };
}

it('a practice night goes through the real commands, and the same seed gives the same night to the last digit', async () => {
  const first = await run(shortNight(), 7);
  const again = await run(shortNight(), 7);
  expect(JSON.stringify(again.report)).toBe(JSON.stringify(first.report));
  const other = await run(shortNight(), 8);
  expect(JSON.stringify(other.report)).not.toBe(JSON.stringify(first.report));

  const { report, house } = first;
  expect(report.pits.map(({ pit }) => pit)).toEqual(['Heron', 'Otter']);
  for (const pit of report.pits) {
    expect(pit.bedsLost).toBe(0);
    expect(pit.checks).toBeGreaterThanOrEqual(3);
    expect(pit.splits).toBeGreaterThanOrEqual(1);
  }
  const count = async (sql: string) => ((await house.database.query(`select count(*)::int as n from ${sql}`)) as [{ n: number }])[0].n;
  expect(await count('fire_check')).toBe(report.pits.reduce((sum, { checks }) => sum + checks, 0));
  expect(await count("wood_move where kind = 'burned'")).toBeGreaterThan(0);
  expect(await count('outbox where done_at is null')).toBe(0);
  expect(await count('yard where practice')).toBe(1);
  expect(await count("audit_entry where command = 'record-check'")).toBe(await count('fire_check'));
}, 240_000);

it('somebody reported away turns round on the way and does nothing until they say that they are here', async () => {
  const night = await openNight(shortNight(), 7);
  const { hands } = night.crew;
  while (!hands.some(({ errand }) => errand) || night.at < night.yard.startsAt + HOUR_S) await night.minute();
  const gone = hands.find(({ errand }) => errand)!;
  const report = async (state: 'away' | 'here') => {
    await opened[0]!.app.get(Shifts).reportPresence(night.yard.lead, { key: randomUUID(), personId: gone.id, state });
    await night.settle();
  };
  await report('away');
  const workedS = gone.workedS;
  const until = later(night.at, HOUR_S / 2);
  while (night.at < until) await night.minute();
  expect([gone.errand, gone.workedS]).toEqual([undefined, workedS]);
  await report('here');
  while (!night.isOver) await night.minute();
  expect(gone.workedS).toBeGreaterThan(workedS);
}, 240_000);

it('wood that no book knows of burns in the true fire as it does in what is believed of it', async () => {
  const { report, house } = await run({ ...shortNight(), lots: [], carts: [] }, 7);
  const checks = (await house.database.query('select lot_id, splits from fire_check')) as { lot_id: string | null; splits: number }[];
  expect(checks.filter(({ lot_id, splits }) => lot_id === null && splits > 0).length).toBeGreaterThan(3);
  const believed = (await house.database.query(`select estimate->>'mode' as mode from pit_fire`)) as { mode: string }[];
  expect(believed.map(({ mode }) => mode)).toEqual(['burning', 'burning']);
  for (const { woodKg, bedsLost } of report.pits) {
    expect(woodKg).toBeGreaterThan(1);
    expect(bedsLost).toBe(0);
  }
}, 240_000);

it('a file that is no sample night is refused with what to correct', () => {
  const broken = join(mkdtempSync(join(tmpdir(), 'stokehold-sample-')), 'broken.json');
  writeFileSync(broken, JSON.stringify({ ...readSample(file), shift: { date: '2027-10-15', from: '25:00', to: '05:00' } }));
  expect(() => readSample(broken)).toThrow('shift.from');
});
