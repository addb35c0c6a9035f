import { afterAll, beforeAll, expect, it } from 'vitest';
import { TestNight } from '../pits/testing.js';
import { Clock, Leading } from '../platform/index.js';
import { HeldClock } from './held-clock.js';
import { MinuteModule } from './minute.module.js';

let night: TestNight;
const clock = () => night.house.app.get(Clock);
const look = () => night.house.app.get(HeldClock).look();
beforeAll(async () => {
  night = await TestNight.open(1, { modules: [MinuteModule] });
  await night.house.app.get(HeldClock).beforeApplicationShutdown(); // it looks when the test does
});
afterAll(() => night.close());

const steps = async () => (await night.house.database.query(`select body from audit_entry where command = 'clock-step' order by nth`)) as { body: object }[];

it('a clock that is set while a night runs is told once, and stands in the record; the night goes on by the time of before', async () => {
  await expect.poll(() => night.house.app.get(Leading).isMine).toBe(true);
  clock().takeOver(600);
  await look();
  await look();
  expect(night.told.filter(({ kind }) => kind === 'clock-stepped')).toEqual([{ kind: 'clock-stepped', byS: 600 }]);
  expect(await steps()).toEqual([{ body: { byS: 600, aheadS: 600 } }]);
  expect(clock().aheadS()).toBe(600);
});

it('set back again it is told once more, and there is nothing to go by but the clock', async () => {
  clock().takeOver(0);
  await look();
  expect((await steps()).map(({ body }) => body)).toEqual([{ byS: 600, aheadS: 600 }, { byS: -600, aheadS: 0 }]);
});

it('when no night runs the new time is taken over, and a minute that is still to come by it can be told', async () => {
  const minute = Math.floor(Date.now() / 60_000);
  await night.house.database.query('insert into minute_told values ($1, $2, false) on conflict (yard_id) do update set minute = excluded.minute', [night.house.yardId, minute + 60]);
  night.house.now = (night.house.now + 14 * 3600) as typeof night.house.now; // the shift is over
  clock().takeOver(-3600);
  await look();
  expect(clock().aheadS()).toBe(0);
  expect(Math.abs(clock().real() - Date.now() / 1000)).toBeLessThan(2);
  const [{ told }] = (await night.house.database.query('select minute::int as told from minute_told where yard_id = $1', [night.house.yardId])) as [{ told: number }];
  expect(told - minute).toBeLessThanOrEqual(1);
});
