import { describe, expect, it } from 'vitest';
import { dryBasis, epochS, later } from '../quantity/index.js';
import { forecastSeasoning, openingOrder, stackAir } from './index.js';

const DAY_S = 86_400;
const now = epochS(1_800_000_000);
const air = stackAir({ months: Array.from({ length: 12 }, (_, i) => ({ tempC: 12 - 10 * Math.cos((i / 12) * 2 * Math.PI), humidityFrac: 0.65 })) });
const reading = (daysAgo: number, moisture: number, deviation = 0.02) => ({ at: later(now, -daysAgo * DAY_S), moisture: dryBasis(moisture), deviation });
const oak = (...readings: ReturnType<typeof reading>[]) => forecastSeasoning({ species: 'white-oak', thicknessM: 0.09, readings }, air, now, dryBasis(0.15));

describe('the forecast of a lot', () => {
  it('the day it is ready has a spread: earliest, likely, latest, in order', () => {
    const { earliestAt, readyAt, latestAt } = oak(reading(60, 0.28), reading(30, 0.25), reading(0, 0.23));
    expect(earliestAt).toBeLessThan(readyAt!);
    expect(readyAt!).toBeLessThan(latestAt!);
  });
  it('more readings leave less open', () => {
    const few = oak(reading(0, 0.22));
    const many = oak(...[90, 75, 60, 45, 30, 15, 0].map((days) => reading(days, 0.22 + days * 0.001, 0.01)));
    expect(many.latestAt! - many.earliestAt!).toBeLessThan(few.latestAt! - few.earliestAt!);
    expect(many.now.deviation).toBeLessThan(few.now.deviation);
  });
  it('a lot at 11 % is ready now; one in air too damp for it is not ready within three years', () => {
    const dry = oak(reading(20, 0.115), reading(0, 0.11));
    expect(dry.readyFrac).toBeGreaterThan(0.9);
    expect(dry.readyAt).toBe(now);
    const damp = stackAir({ months: Array.from({ length: 12 }, () => ({ tempC: 10, humidityFrac: 0.92 })) });
    expect(forecastSeasoning({ species: 'white-oak', thicknessM: 0.09, readings: [reading(0, 0.3)] }, damp, now, dryBasis(0.15)).readyAt).toBeUndefined();
  });
  it('a thin lot is ready before a thick one, split before unsplit', () => {
    const ready = (thicknessM: number, splitAt?: number) =>
      forecastSeasoning({ species: 'white-oak', thicknessM, cutAt: later(now, -100 * DAY_S), ...(splitAt !== undefined && { splitAt: later(now, splitAt) }), readings: [] }, air, now, dryBasis(0.15)).readyAt!;
    expect(ready(0.06)).toBeLessThan(ready(0.12));
    expect(ready(0.09)).toBeLessThan(ready(0.09, 200 * DAY_S));
  });
  it('a reading over fibre saturation holds nothing down: the next true one counts', () => {
    const { now: today } = oak(reading(40, 0.42, 0.1), reading(0, 0.24));
    expect(today.moisture).toBeGreaterThan(0.21);
    expect(today.moisture).toBeLessThan(0.28);
  });
  it('readings still to come are not known yet, and without any reading the forecast says that it knows little', () => {
    const future = oak(reading(0, 0.22), { at: later(now, 50 * DAY_S), moisture: dryBasis(0.1), deviation: 0.01 });
    expect(future.now.moisture).toBeCloseTo(oak(reading(0, 0.22)).now.moisture, 12);
    expect(oak().now.deviation).toBeGreaterThan(0.2);
  });
  it('the year turns: the equilibrium of air goes on without a step from December to January', () => {
    const newYear = 57 * 365.2425 * DAY_S;
    expect(Math.abs(air.equilibriumAt(epochS(newYear - 3600)) - air.equilibriumAt(epochS(newYear + 3600)))).toBeLessThan(1e-4);
    expect(air.speedAt(epochS(newYear + 182 * DAY_S))).toBeGreaterThan(air.speedAt(epochS(newYear)));
  });
});

it('first in, first ready: what is ready goes first by the day it came, then what is ready soonest', () => {
  const lot = (id: string, boughtDaysAgo: number, readyFrac: number, readyInDays?: number) => ({
    id, boughtAt: later(now, -boughtDaysAgo * DAY_S),
    seasoning: { ...oak(reading(0, 0.2)), readyFrac, readyAt: readyInDays === undefined ? undefined : later(now, readyInDays * DAY_S) },
  });
  const order = openingOrder([lot('new-dry', 10, 0.9, 0), lot('green', 5, 0.01), lot('half', 300, 0.2, 90), lot('old-dry', 400, 0.8, 0), lot('soon', 20, 0.4, 20)]);
  expect(order.map(({ id }) => id)).toEqual(['old-dry', 'new-dry', 'soon', 'half', 'green']);
  expect(order.at(-1)!.state).toBe('not-within-three-years');
});
