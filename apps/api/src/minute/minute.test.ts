import { fromIso, HOUR_S, type YardId } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Outbox } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { Minute, MinuteModule } from './index.js';

const SHIFT = { from: '2027-01-15T23:00:00Z', until: '2027-01-16T11:00:00Z' };
let house: TestHouse;
const heard: string[] = [];
beforeAll(async () => {
  house = await openTestHouse([MinuteModule], SHIFT.from);
  house.app.get(Outbox).listen(async (_, __, event) => void heard.push(event.kind));
  await house.database.query('insert into shift values ($1, $2, $3, $4)', [randomUUID(), house.yardId, SHIFT.from, SHIFT.until]);
});
afterAll(() => house.close());

const tellAtOnce = async (times: number, yardId = house.yardId) => {
  heard.length = 0;
  const told = await Promise.all(Array.from({ length: times }, () => house.app.get(Minute).tell(yardId)));
  await house.settle();
  return told.filter(Boolean).length;
};

it('however many tell it, each minute reaches the yard once', async () => {
  house.now = fromIso('2027-01-15T23:10:00Z');
  expect(await tellAtOnce(5)).toBe(1);
  expect(heard).toEqual(['minute-passed']);
  house.now = fromIso('2027-01-15T23:10:59Z');
  expect(await tellAtOnce(1)).toBe(0);
  house.now = fromIso('2027-01-15T23:11:00Z');
  expect(await tellAtOnce(2)).toBe(1);
});

it('a clock that went back an hour tells no minute twice', async () => {
  house.now = fromIso('2027-01-15T23:20:00Z');
  expect(await tellAtOnce(1)).toBe(1);
  house.now = fromIso('2027-01-15T23:19:00Z');
  expect(await tellAtOnce(1)).toBe(0);
});

it('a teller that dies before its commit leaves the minute to the next', async () => {
  house.now = fromIso('2027-01-15T23:30:00Z');
  const dying = house.database.createQueryRunner();
  await dying.connect();
  await dying.query('begin');
  await dying.query('update minute_told set minute = minute + 1 where yard_id = $1', [house.yardId]);
  const next = house.app.get(Minute).tell(house.yardId);
  await dying.query('rollback');
  await dying.release();
  expect(await next).toBe(true);
});

it('a shift that is over is told one minute more, and then none', async () => {
  house.now = (fromIso(SHIFT.until) + 2 * HOUR_S) as typeof house.now;
  expect(await tellAtOnce(3)).toBe(1);
  house.now = (house.now + 60) as typeof house.now;
  expect(await tellAtOnce(1)).toBe(0);
});

it('a yard that never had a shift is not told', async () => {
  const quiet = randomUUID() as YardId;
  await house.database.query(`insert into yard select $1, 'Quiet Yard', time_zone, units, language, plan_width_m, plan_height_m, plan_top_deg, wood_x_m,
    wood_y_m, walk_speed_m_per_s, screen_diagonal_m, view_distance_m, practice, 0, created_at from yard where id = $2`, [quiet, house.yardId]);
  expect(await tellAtOnce(2, quiet)).toBe(0);
});

it('yards of practice nights are left out of the tick', async () => {
  house.now = fromIso('2027-01-16T01:00:00Z');
  await house.database.query('update minute_told set minute = 0');
  await house.database.query('update yard set practice = true where id = $1', [house.yardId]);
  const told = async () => Number(((await house.database.query('select minute from minute_told where yard_id = $1', [house.yardId])) as { minute: string }[])[0]?.minute);
  await house.app.get(Minute).onTheMinute();
  expect(await told()).toBe(0);
  await house.database.query('update yard set practice = false where id = $1', [house.yardId]);
  await house.app.get(Minute).onTheMinute();
  expect(await told()).toBe(Math.floor(house.now / 60));
});
