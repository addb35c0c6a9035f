import { routes } from '@stokehold/domain/contract';
import { epochS, later } from '@stokehold/domain/quantity';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { FirstRunToken, Identity } from '../identity/index.js';
import { Clock } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { FirstRunModule } from './index.js';

let house: TestHouse;
let real = epochS(1_800_000_000);
beforeAll(async () => {
  house = await openTestHouse([FirstRunModule]);
  await house.database.query('delete from yard');
  house.actor = undefined;
  house.app.get(Clock).real = () => real;
});
afterAll(() => house.close());
beforeEach(() => {
  real = later(real, 60);
});

const yard = {
  name: 'Gull Lane', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 30, planHeightM: 20, planTopDeg: 0, woodPlace: { xM: 1, yM: 1 },
  walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
};
const send = (token: string, more: object = {}) =>
  request(house.app.getHttpServer()).post('/api/first-run').send({ token, yard, manager: { name: 'Sol', pin: '583016', language: 'en' }, deviceName: 'Desk', ...more });
const yards = async () => Number((await house.database.query('select count(*) as n from yard'))[0].n);
const token = () => house.app.get(FirstRunToken).issue();

it('without the token nobody sets anything up', async () => {
  await send('a-guess-of-twenty-letters').expect(403, /first-run-token-wrong/);
  const old = (await token())!;
  await token();
  await send(old).expect(403, /first-run-token-wrong/);
  expect(await yards()).toBe(0);
});

it('a first run that is refused leaves nothing behind and may be tried again', async () => {
  const given = (await token())!;
  await send(given, { yard: { ...yard, timeZone: 'America/Nowhere' } }).expect(400, /time zone/);
  await send(given, { manager: { name: 'Sol', pin: '111111', language: 'en' } }).expect(400, /input-invalid/);
  expect(await yards()).toBe(0);
});

it('the token makes the yard, its manager and this device, signed in, once however often it is sent', async () => {
  const given = (await token())!;
  const answers = await Promise.all([send(given), send(given), send(given)]);
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
  const made = answers.find(({ status }) => status === 201)!;
  expect(routes.firstRun.reply.parse(made.body)).toMatchObject({ yard: { name: 'Gull Lane', practice: false }, device: { name: 'Desk', kind: 'hand' }, person: { name: 'Sol', role: 'manager' } });
  const cookies = (made.headers['set-cookie'] as unknown as string[]).map((cookie) => cookie.split(';')[0]).join('; ');
  const setup = await request(house.app.getHttpServer()).get('/api/setup').set('Cookie', cookies).expect(200);
  expect(setup.body.crew).toMatchObject([{ name: 'Sol', role: 'manager', hasPin: true }]);
  expect(await yards()).toBe(1);
  expect(await house.app.get(Identity).hasManager()).toBe(true);
});

it('afterwards there is no token any more, and none opens anything', async () => {
  expect(await token()).toBeUndefined();
  await send('a-guess-of-twenty-letters').expect(409, /first-run-done/);
  expect(await yards()).toBe(1);
});
