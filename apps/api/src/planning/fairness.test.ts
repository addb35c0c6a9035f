import { fairnessView, type FairnessView } from '@stokehold/domain/contract';
import { HOUR_S, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sameIds, type TestHouse } from '../platform/testing.js';
import { asking, at, band, EVENING, night, on, openPlanningHouse } from './testing.js';
import { SearchBudget } from './index.js';

const [ana, bo, bess, nell] = sameIds(4) as [string, string, string, string];
const DAY_S = 24 * HOUR_S;
let house: TestHouse;
let ask: ReturnType<typeof asking>;
beforeAll(async () => {
  house = await openPlanningHouse({ Ana: ana, Bo: bo }, { Bess: bess, Nell: nell });
  ask = asking(house);
  house.app.get(SearchBudget).atOnce = 2000; // evening out is what comes last in a search
});
afterAll(async () => {
  await house.settle();
  await house.close();
});
const view = async (): Promise<FairnessView> => fairnessView.strict().parse(await ask.get('/fairness'));
const of = ({ people }: FairnessView, id: string) => people.find(({ personId }) => personId === id);

/** A night that is over, in which Ana did so many checks and hauls and Bo none. */
async function pastNight(daysAgo: number, checks: number): Promise<void> {
  const from = later(EVENING, -daysAgo * DAY_S);
  const shiftId = randomUUID();
  const until = toIso(later(from, 12 * HOUR_S));
  await house.database.query('insert into shift values ($1, $2, $3, $4)', [shiftId, house.yardId, toIso(from), until]);
  for (const id of [ana, bo]) await house.database.query(`insert into shift_person values ($1, $2, $3, $4, 'here', null, null)`, [shiftId, id, toIso(from), until]);
  for (let n = 0; n < checks; n++) {
    const seenAt = toIso(later(from, (n + 1) * 1800));
    await house.database.query(
      `insert into task (id, yard_id, shift_id, kind, earliest_at, due_at, latest_at, length_s, people, done_at, done_by) values ($1, $2, $3, 'haul', $4, $4, $4, 900, 1, $4, $5)`,
      [randomUUID(), house.yardId, shiftId, seenAt, ana],
    );
  }
}

it('before any night nobody has had anything', async () => {
  expect((await view()).people).toEqual([]);
});

it('the last four weeks count, an older night does not, and tonight is told as it is planned', async () => {
  await pastNight(2, 4);
  await pastNight(1, 2);
  await pastNight(40, 9);
  await ask.post('/shifts', { ...night([on(ana), on(bo)], [bess, nell]), pits: [bess, nell].map((pitId) => ({ pitId, band, lightAt: at(0.2) })) });
  const made = await view();
  // by hand: six hauls of 15 minutes in two nights of 12 hours; at the wood all the time
  expect(of(made, ana)).toMatchObject({ nights: 2, before: { thereS: 2 * 12 * HOUR_S, workedS: 5400, unpleasantS: 5400, walkedS: 0 } });
  expect(of(made, bo)).toMatchObject({ nights: 2, before: { workedS: 0, unpleasantS: 0 } });
  expect(of(made, ana)?.tonight?.thereS).toBe(12 * HOUR_S);
  expect(of(made, ana)?.tonight?.walkedS).toBeGreaterThan(0);
});

it('whoever did more than their share of late gets less tonight, up to half an hour', async () => {
  const made = await view();
  const [more, less] = [of(made, bo)?.tonight?.workedS ?? 0, of(made, ana)?.tonight?.workedS ?? 0];
  expect(more - less).toBeGreaterThan(600);
  expect(more - less).toBeLessThanOrEqual(2400);
  expect((await ask.plan()).evenness).toBeLessThan(1);
});
