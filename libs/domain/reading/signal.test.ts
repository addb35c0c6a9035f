import { describe, expect, it } from 'vitest';
import { epochS, later, randomStream } from '../quantity/index.js';
import { judgeNext, judgeSeries, NEW_SIGNAL, type Judged, type Sample } from './signal.js';

const START = epochS(1_800_000_000);
/** A series every ten seconds. */
const series = (count: number, tempAt: (seconds: number) => number | 'open', everyS = 10): Sample[] =>
  Array.from({ length: count }, (_, nth) => {
    const value = tempAt(nth * everyS);
    const at = later(START, nth * everyS);
    return value === 'open' ? { at, fault: 'open' as const } : { at, shownC: Math.round(value * 10) / 10 };
  });
const normal = (seed: number) => {
  const random = randomStream(seed);
  return () => random.normal();
};
const first = (judged: readonly Judged[], is: (one: Judged) => boolean) => {
  const found = judged.find(is);
  return found && found.at - START;
};
const share = (judged: readonly Judged[], quality: Judged['quality']) => judged.filter((one) => one.quality === quality).length / judged.length;

it('a chamber that breathes with its fire is good all night, at any pace', () => {
  const noise = normal(1);
  const fire = (s: number) => 121 + 4 * Math.sin(s / 430) + 0.4 * noise();
  expect(share(judgeSeries(series(4320, fire), 'chamber').judged, 'good')).toBe(1);
  expect(share(judgeSeries(series(360, fire, 120), 'chamber').judged, 'good')).toBe(1);
});

it('a chamber that is lit, and one whose door is opened, is good', () => {
  const noise = normal(2);
  const lit = (s: number) => Math.min(121, 15 + s / 30) + 0.4 * noise();
  expect(share(judgeSeries(series(500, lit), 'chamber').judged, 'good')).toBe(1);
  // 25 K in two minutes down and in four up again. Common practice, no source.
  const opened = (s: number) => 121 - Math.max(0, Math.min(s / 4.8, 25, (360 - s) / 9.6)) + 0.4 * noise();
  expect(share(judgeSeries(series(60, opened), 'chamber').judged, 'good')).toBe(1);
});

describe('stuck at one value', () => {
  const stuckFrom = 1800;
  const noise = normal(3);
  const { judged } = judgeSeries(series(600, (s) => (s >= stuckFrom ? 121.3 : 121 + 3 * Math.sin(s / 300) + 0.4 * noise())), 'chamber');
  it('is suspect within 10 minutes and bad within 20', () => {
    expect(first(judged, ({ reason, quality }) => reason === 'stuck' && quality === 'suspect')! - stuckFrom).toBeLessThanOrEqual(600 + 10);
    expect(first(judged, ({ reason, quality }) => reason === 'stuck' && quality === 'bad')! - stuckFrom).toBeLessThanOrEqual(1200 + 10);
    expect(judged.at(-1)).toMatchObject({ quality: 'bad', reason: 'stuck' });
  });
  it('and good again as soon as it moves', () => {
    const { judged: after } = judgeSeries([...series(600, (s) => (s >= stuckFrom ? 121.3 : 121)), { at: later(START, 6000), shownC: 121.9 }], 'chamber');
    expect(after.at(-1)).toEqual({ at: later(START, 6000), quality: 'good' });
  });
  it('a cold pit may stand still', () => expect(share(judgeSeries(series(600, () => 12), 'chamber').judged, 'good')).toBe(1));
});

describe('a stall', () => {
  it('that creeps half a kelvin an hour for six hours is no stuck probe', () => {
    const noise = normal(4);
    expect(share(judgeSeries(series(2160, (s) => 67 + s / 7200 + 0.08 * noise()), 'food').judged, 'good')).toBe(1);
  });
  it('of a probe that shows whole degrees is flat for hours, and is no stuck probe', () => {
    const { judged } = judgeSeries(series(2160, (s) => Math.round(67.2 + s / 7200)), 'food');
    expect(share(judged, 'good')).toBe(1);
  });
  it('that loses its noise is doubted after half an hour, and never more than doubted', () => {
    const noise = normal(5);
    const { judged } = judgeSeries(series(1500, (s) => (s < 3600 ? 67 + 0.1 * noise() : 67.1)), 'food');
    expect(first(judged, ({ reason }) => reason === 'stuck')! - 3600).toBeLessThanOrEqual(1810);
    expect(share(judged, 'bad')).toBe(0);
  });
});

describe('an open wire', () => {
  it('with a flag is bad at its first sample and good at the first value after it', () => {
    const { judged } = judgeSeries(series(30, (s) => (s >= 100 && s < 200 ? 'open' : 121 + s / 100)), 'chamber');
    expect(first(judged, ({ quality }) => quality === 'bad')).toBe(100);
    expect(judged.filter(({ reason }) => reason === 'open')).toHaveLength(10);
    expect(judged[20]).toMatchObject({ quality: 'good' });
  });
  it('without a flag is bad as soon as the burn-out current has driven it off the scale', () => {
    const { judged } = judgeSeries(series(30, (s) => (s >= 100 ? 1200 : 121)), 'chamber');
    expect(judged[10]).toMatchObject({ quality: 'bad', reason: 'out-of-range' });
  });
});

it('a spike is bad, and those beside it good', () => {
  const { judged } = judgeSeries(series(30, (s) => (s === 100 ? 160 : 121 + s / 100)), 'chamber');
  expect(judged.filter(({ quality }) => quality !== 'good')).toEqual([{ at: later(START, 100), quality: 'bad', reason: 'spike' }]);
});

it('the newest sample that leaps is only suspect: nobody knows yet', () => {
  expect(judgeSeries(series(11, (s) => (s === 100 ? 130 : 121)), 'chamber').judged.at(-1)).toMatchObject({ quality: 'suspect', reason: 'spike' });
});

it('a step that stays is true after all', () => {
  const { judged } = judgeSeries(series(30, (s) => (s >= 100 ? 130 : 121) + s / 100), 'chamber');
  expect(share(judged, 'good')).toBe(1);
});

it('a leap that no chamber makes is bad, and the level after it is doubted for ten minutes', () => {
  const { judged } = judgeSeries(series(120, (s) => (s >= 100 ? 15 : 121) + s / 100), 'chamber');
  expect(judged[10]).toMatchObject({ quality: 'bad', reason: 'rate' });
  expect(judged[40]).toMatchObject({ quality: 'suspect', reason: 'rate' });
  expect(judged[80]).toMatchObject({ quality: 'good' });
});

it('meat that is lifted out of the pit climbs as no meat does', () => {
  const { judged } = judgeSeries(series(60, (s) => (s < 300 ? 67 : 67 + (s - 300) * 0.15)), 'food');
  expect(judged.at(-1)).toMatchObject({ quality: 'suspect', reason: 'rate' });
});

it('a chattering connection is noisy', () => {
  const noise = normal(6);
  const { judged } = judgeSeries(series(200, (s) => 121 + (s > 600 ? 6 : 0.4) * noise()), 'chamber');
  expect(judged.slice(-60).filter(({ reason }) => reason === 'noisy' || reason === 'spike').length).toBeGreaterThan(40);
});

it('judged one by one or after a stop, a series comes out the same', () => {
  const noise = normal(7);
  const samples = series(400, (s) => (s % 700 === 0 ? 160 : 121 + 2 * Math.sin(s / 200) + 0.4 * noise()));
  const whole = judgeSeries(samples, 'chamber').judged;
  const half = judgeSeries(samples.slice(0, 173), 'chamber');
  const kept = JSON.parse(JSON.stringify(half.signal)) as typeof half.signal;
  const rest = judgeSeries(samples.slice(173), 'chamber', kept);
  const together = new Map([...half.judged, ...rest.judged].map((one) => [one.at, one]));
  expect([...together.values()]).toEqual(whole);
});

it.each([Number.NaN, Infinity, -1e9, 1e9])('%d is out of range and leaves the series as it was', (shownC) => {
  const { signal } = judgeSeries(series(5, () => 121), 'chamber');
  expect(judgeNext(signal, { at: later(START, 50), shownC }, 'chamber')).toEqual({ signal, judged: [{ at: later(START, 50), quality: 'bad', reason: 'out-of-range' }] });
});
it('the first sample is taken as it is', () => expect(judgeNext(NEW_SIGNAL, { at: START, shownC: 121 }, 'chamber').judged).toEqual([{ at: START, quality: 'good' }]));
