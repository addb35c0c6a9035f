import { type Route, routes } from '@stokehold/domain/contract';
import { type DeviceId, epochS, later, type PersonId, type YardId } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AppModule } from '../app.module.js';
import { Clock } from '../platform/index.js';
import { type OpenedHouse, openTestHouseOf } from '../platform/testing.js';
import { Enrolment } from './index.js';

// The whole house with every route, and no hand in who asks.
let house: OpenedHouse;
let real = epochS(1_800_000_000);
const yardId = randomUUID() as YardId;
const crewId = randomUUID() as PersonId;
let wall: string;
let gateway: string;
let hand: { deviceId: DeviceId; token: string };
let crew: string;

beforeAll(async () => {
  house = await openTestHouseOf((databaseUrl, dataFolder) => AppModule.on({ databaseUrl, workers: 0, connections: 4, dataFolder }));
  house.app.get(Clock).real = () => real;
  await house.database.query(`insert into yard values ($1, 'Gull Lane', 'America/Chicago', 'us', 'en', 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, now())`, [yardId]);
  await house.database.query(`insert into crew_member values ($1, $2, 'Tam', 'crew', 'en', 2200, null, false)`, [crewId, yardId]);
  const enrolment = house.app.get(Enrolment);
  const device = (kind: 'wall' | 'hand' | 'gateway') => enrolment.addDevice(house.database.manager, { yardId, kind, name: kind });
  wall = `stokehold_device=${(await device('wall')).token}`;
  gateway = (await device('gateway')).token;
  hand = await device('hand');
  crew = `stokehold_device=${hand.token}; stokehold_session=${await enrolment.beginSession(house.database.manager, hand.deviceId, crewId)}`;
});
afterAll(() => house.close());

const every = Object.entries(routes as Record<string, Route>).map(([name, route]) => ({ name, route }));
const asking = (...may: Route['may'][]) => every.filter(({ route }) => may.includes(route.may));
function ask(route: Route, headers: Record<string, string> = {}) {
  real = later(real, 61);
  const path = `/api${route.path.replaceAll(/:\w+/g, () => randomUUID())}`;
  const http = request(house.app.getHttpServer());
  return (route.method === 'GET' ? http.get(path) : http.post(path).send({})).set(headers);
}

it('what is open without a device is health, the first run and enrolment, and nothing else', () => {
  expect(asking('open').map(({ name }) => name).sort()).toEqual(['enrolDevice', 'firstRun', 'health']);
});

describe('without a device', () => {
  it.each(every.filter(({ route }) => route.may !== 'open'))('$name answers nothing', async ({ route }) => {
    for (const headers of [{}, { Cookie: 'stokehold_device=made-up; stokehold_session=made-up' }, { Authorization: 'Bearer made-up' }]) {
      const answer = await ask(route, headers as Record<string, string>).expect(401);
      expect(answer.body.code).toBe('device-unknown');
    }
  });
});

describe('on a wall', () => {
  it.each(asking('look'))('$name is shown', async ({ route }) => {
    expect([401, 403]).not.toContain((await ask(route, { Cookie: wall })).status);
  });
  it.each(asking('read-in', 'record', 'plan', 'manage'))('$name is not allowed', async ({ route }) => {
    const answer = await ask(route, { Cookie: wall }).expect(403);
    expect(answer.body.code).toBe('not-allowed');
  });
  it('the state is read', async () => {
    await ask(routes.state, { Cookie: wall }).expect(200);
  });
});

describe('a gateway', () => {
  it.each(asking('look', 'record', 'plan', 'manage'))('may not $name', async ({ route }) => {
    await ask(route, { Authorization: `Bearer ${gateway}` }).expect(403);
  });
  it('may send readings', async () => {
    const answer = await ask(routes.recordReadings, { Authorization: `Bearer ${gateway}` }).expect(400);
    expect(answer.body.code).toBe('input-invalid');
  });
});

describe('a device on which nobody is signed in', () => {
  it.each(asking('look', 'read-in', 'record', 'plan', 'manage'))('is asked to sign in for $name', async ({ route }) => {
    const answer = await ask(route, { Cookie: `stokehold_device=${hand.token}` }).expect(401);
    expect(answer.body.code).toBe('not-signed-in');
  });
});

describe('a crew member', () => {
  it.each(asking('plan', 'manage'))('may not $name', async ({ route }) => {
    const answer = await ask(route, { Cookie: crew }).expect(403);
    expect(answer.body.code).toBe('not-allowed');
  });
  it.each(asking('look', 'read-in', 'record'))('may $name', async ({ route }) => {
    expect([401, 403]).not.toContain((await ask(route, { Cookie: crew })).status);
  });
});

it('how the API is called may be read by everybody, and shows nothing of a yard', async () => {
  const answer = await request(house.app.getHttpServer()).get('/api/openapi.json').expect(200);
  expect(JSON.stringify(answer.body)).not.toContain('Gull Lane');
});
