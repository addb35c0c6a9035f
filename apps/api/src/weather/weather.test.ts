import { weatherView } from '@stokehold/domain/contract';
import { epochS, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { WeatherModule, WeatherNow } from './index.js';

let house: TestHouse;
beforeAll(async () => {
  house = await openTestHouse([WeatherModule]);
});
afterAll(() => house.close());

const seen = (more: object = {}) => ({ key: randomUUID(), seenAt: toIso(house.now), windMPerS: 3, gustMPerS: 6, fromDeg: 270, ambientTempC: 8, rainFrac: 0, ...more });
const send = (body: object) => request(house.app.getHttpServer()).post('/api/weather').send(body);
const now = async (at = house.now) => weatherView.strict().parse(await house.app.get(WeatherNow).at(house.database.manager, house.yardId, at));

it('until somebody looks, a calm mild night is reckoned with, and it says that nobody looked', async () => {
  expect(await now()).toEqual({ windMPerS: 0, gustMPerS: 0, fromDeg: 0, ambientTempC: 15, rainFrac: 0, seenAt: null, source: 'supposed' });
});

it('what was seen last counts, with its age; the same key twice is one look', async () => {
  const command = seen();
  for (let i = 0; i < 2; i++) await send(command).expect(201);
  await send(seen({ seenAt: toIso(later(house.now, -1800)), windMPerS: 1 })).expect(201);
  expect(await now()).toMatchObject({ windMPerS: 3, fromDeg: 270, seenAt: command.seenAt });
  expect(await now(later(house.now, -60))).toMatchObject({ windMPerS: 1 });
  const rows = await house.database.query('select wind_m_per_s, gust_m_per_s, from_deg, ambient_temp_c from weather order by seen_at desc');
  expect(rows).toHaveLength(2);
  expect(rows[0]).toEqual({ wind_m_per_s: 3, gust_m_per_s: 6, from_deg: 270, ambient_temp_c: 8 });
  const told = await house.database.query(`select event from outbox where event->>'kind' = 'weather-recorded'`);
  expect(told).toHaveLength(2);
});

it('a phone whose clock is 45 minutes fast saw the wind when it told of it', async () => {
  house.now = epochS(house.now + 600);
  await send(seen({ seenAt: toIso(later(house.now, 45 * 60)), windMPerS: 5 })).expect(201);
  expect(await now()).toMatchObject({ windMPerS: 5, seenAt: toIso(house.now) });
});

it.each([
  { more: { gustMPerS: 2 }, path: 'gustMPerS' },
  { more: { windMPerS: 90, gustMPerS: 90 }, path: 'windMPerS' },
  { more: { fromDeg: 360 }, path: 'fromDeg' },
  { more: { ambientTempC: 75 }, path: 'ambientTempC' },
  { more: { seenAt: 'tonight' }, path: 'seenAt' },
])('$more is refused and the answer names $path', async ({ more, path }) => {
  const answer = await send(seen(more)).expect(400);
  expect(answer.body.code).toBe('input-invalid');
  expect(answer.body.fields.map((field: { path: string }) => field.path)).toContain(path);
});
