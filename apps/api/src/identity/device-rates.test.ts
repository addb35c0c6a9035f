import { routes } from '@stokehold/domain/contract';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { RefusalError } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { DeviceRates } from './device-rates.js';
import { Enrolment } from './enrolment.js';
import { IdentityModule } from './identity.module.js';

describe('the measure of a device, 20 a second', () => {
  let rates: DeviceRates;
  beforeEach(() => {
    rates = new DeviceRates();
    rates.perS = 20;
  });
  /** How many of so many requests at one instant are let through. */
  const through = (many: number, nowMs: number, token = 'a', route: Parameters<DeviceRates['take']>[1] = routes.state) =>
    Array.from({ length: many }).filter(() => {
      try {
        rates.take(token, route, nowMs);
        return true;
      } catch (error) {
        expect(error).toBeInstanceOf(RefusalError);
        return false;
      }
    }).length;

  it('forty may come at once; after that as many as time brings', () => {
    expect(through(60, 0)).toBe(40);
    expect(through(60, 1000)).toBe(20);
    expect(through(60, 1050)).toBe(1);
    expect(through(60, 9000)).toBe(40);
  });

  it('who sends steadily at the measure is never refused', () => {
    expect(Array.from({ length: 2000 }, (_, nth) => through(1, nth * 50)).every((one) => one === 1)).toBe(true);
  });

  it('each device has its own, and readings have one beside it', () => {
    expect(through(60, 0, 'a')).toBe(40);
    expect(through(60, 0, 'b')).toBe(40);
    expect(through(200, 0, 'a', routes.recordReadings)).toBe(120);
  });

  it('a clock that stood still gives nothing, and one that ran long gives no more than the burst', () => {
    through(60, 5000);
    expect(through(60, 5000)).toBe(0);
    expect(through(100, 3_600_000)).toBe(40);
  });
});

describe('over HTTP', () => {
  let house: TestHouse;
  beforeAll(async () => {
    house = await openTestHouse([IdentityModule]);
    house.actor = undefined;
    house.app.get(DeviceRates).perS = 1;
  });
  afterAll(() => house.close());
  const me = (token: string) => request(house.app.getHttpServer()).get('/api/me').set('Cookie', `stokehold_device=${token}`);

  it('a device that sends too fast is told so with when to come again; another one beside it is answered', async () => {
    const [fast, calm] = await Promise.all(['hand', 'wall'].map((kind) => house.app.get(Enrolment).addDevice(house.database.manager, { yardId: house.yardId, kind: kind as 'hand', name: kind })));
    await me(fast!.token).expect(200);
    await me(fast!.token).expect(200);
    const refused = await me(fast!.token).expect(429).expect('content-type', /application\/problem\+json/).expect('retry-after', '1');
    expect(refused.body).toMatchObject({ code: 'device-too-fast', values: { seconds: 1 }, detail: expect.stringMatching(/send it again in 1 s, under the same key/) });
    await me(calm!.token).expect(200);
  });

  it('a stranger without a token is no device, and is asked to enrol', async () => {
    for (let nth = 0; nth < 5; nth++) await request(house.app.getHttpServer()).get('/api/me').expect(401, /device-unknown/);
  });
});
