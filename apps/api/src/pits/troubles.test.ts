import { type FireTroubleView, fireView } from '@stokehold/domain/contract';
import { fromIso, toIso } from '@stokehold/domain/quantity';
import { afterEach, expect, it } from 'vitest';
import { Fires } from './index.js';
import { TestNight } from './testing.js';

let night: TestNight;
afterEach(() => night.close());

const troubles = async (): Promise<readonly FireTroubleView[]> => {
  const [one] = await night.house.app.get(Fires).view(night.house.database.manager, night.house.yardId, night.house.now);
  return fireView.parse(one!.fire).troubles;
};
const codes = async () => (await troubles()).map(({ code }) => code);
const read = (temps: readonly [number, number]) =>
  night.post('/readings', { readings: temps.map((tempC, end) => ({ probeId: night.probes[end], tempC, takenAt: toIso(night.house.now) })) });

it('a fire that burns as it should has nothing wrong', async () => {
  night = await TestNight.open();
  await night.check().expect(201);
  await night.minutes(10, () => read([122, 119]));
  expect(await codes()).toEqual([]);
});

it('a fire just lit is starting up until somebody has graded its bed', async () => {
  night = await TestNight.open(1, { lightAt: fromIso('2027-01-15T23:00:00Z') });
  await night.minutes(2);
  expect(await codes()).toEqual(['not-lit']);
});

it('a probe that shows what cannot be for ten minutes is lost, with its end and since when; the fire goes on from the other', async () => {
  night = await TestNight.open();
  await night.check().expect(201);
  await night.minutes(10, () => read([122, 119]));
  await night.minutes(14, () => read([20, 119]));
  const [lost] = await troubles();
  expect(lost).toMatchObject({ code: 'probe-lost', end: 'fire-end' });
  expect(lost?.code === 'probe-lost' && night.house.now - fromIso(lost.since)).toBeGreaterThanOrEqual(600);
});

it('an hour in which nothing was read or seen is said with since when, and a look ends it', async () => {
  night = await TestNight.open();
  const seenAt = toIso(night.house.now);
  await night.check({ splits: 2, bed: 'full', left: 'most' }).expect(201);
  await night.minutes(62);
  expect((await troubles()).find(({ code }) => code === 'nothing-known')).toEqual({ code: 'nothing-known', since: seenAt });
  await night.check({ splits: 2, bed: 'fair', left: 'coals' }).expect(201);
  await night.house.settle();
  expect(await codes()).not.toContain('nothing-known');
});

it('a fire left alone for hours is nearly out, then out', async () => {
  night = await TestNight.open();
  await night.check({ splits: 0, bed: 'low', left: 'coals' }).expect(201);
  const seen: string[] = [];
  for (let step = 0; step < 24 && !seen.includes('out'); step++) {
    await night.minutes(10);
    seen.push(...(await codes()));
  }
  expect(seen.indexOf('bed-nearly-out')).toBeGreaterThanOrEqual(0);
  expect(seen.indexOf('out')).toBeGreaterThan(seen.indexOf('bed-nearly-out'));
});
