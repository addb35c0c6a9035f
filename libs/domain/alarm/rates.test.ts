import { expect, it } from 'vitest';
import { epochS, later, type PersonId, type PitId } from '../quantity/index.js';
import { type Called, ratesOf } from './rates.js';

const FROM = epochS(1_800_000_000);
const UNTIL = later(FROM, 12 * 3600);
const [ines, odell] = ['ines', 'odell'] as PersonId[] as [PersonId, PersonId];
let id = 0;
const called = (atS: number, more: Partial<Called> = {}): Called => ({ alarmId: String((id += 1)), at: later(FROM, atS), kind: 'above-band', pitId: 'a' as PitId, people: [ines], ...more });
const rates = (all: readonly Called[]) => ratesOf(all, { from: FROM, until: UNTIL });

it('an alarm each hour is 12 a night, and a sixth of one in ten minutes', () => {
  const { people, calls } = rates(Array.from({ length: 12 }, (_, nth) => called(nth * 3600)));
  expect(calls).toBe(12);
  // By hand: 12 calls over 72 stretches of ten minutes.
  expect(people).toEqual([{ personId: ines, calls: 12, meanPerTenMinutes: 12 / 72, mostInTenMinutes: 1 }]);
});
it('a call to two people is one call of each', () => expect(rates([called(0, { people: [ines, odell] }), called(10)]).people.map(({ calls }) => calls)).toEqual([2, 1]));
it('the most in ten minutes is looked for wherever ten minutes begin', () => {
  // Four in the last minutes of one clock stretch and three in the first of the next: seven within ten minutes.
  const all = [540, 550, 560, 570, 610, 620, 630, 1300].map((at) => called(at));
  expect(rates(all).people[0]?.mostInTenMinutes).toBe(7);
});
it('eleven in ten minutes begin a flood; ten do not', () => {
  const burst = (count: number) => Array.from({ length: count }, (_, nth) => called(nth * 30));
  expect(rates(burst(10)).floodFrac).toBe(0);
  // By hand: from the 11th call at 300 s until ten minutes after the last, at 900 s.
  expect(rates(burst(11)).floodFrac).toBeCloseTo(600 / 43_200, 9);
});
it('the most frequent alarms come first, with their share', () => {
  const { badActors } = rates([called(0), called(900), called(1800), called(2700, { kind: 'probe-failed' })]);
  expect(badActors).toEqual([{ kind: 'above-band', pitId: 'a', calls: 3, frac: 0.75 }, { kind: 'probe-failed', pitId: 'a', calls: 1, frac: 0.25 }]);
});
it('three times in a minute chatters; twice does not', () => {
  expect(rates([called(0), called(30), called(60)]).chattering).toBe(1);
  expect(rates([called(0), called(30), called(90)]).chattering).toBe(0);
});
it('over in fifteen seconds is fleeting, on for more than a day is standing', () => {
  const { fleeting, standing } = rates([called(0, { until: later(FROM, 15) }), called(900, { until: later(FROM, 916) }), called(1800, { until: later(FROM, 1800 + 86_401) })]);
  expect([fleeting, standing]).toEqual([1, 1]);
});
it('shares of the priorities add up, and a night without alarms has none', () => {
  const { priorityFrac } = rates([called(0), called(1, { kind: 'running-away' }), called(2, { kind: 'past-latest-safe' }), called(3, { kind: 'bed-nearly-out' })]);
  expect(priorityFrac).toEqual({ critical: 0.25, high: 0.25, medium: 0.25, low: 0.25 });
  expect(rates([])).toMatchObject({ calls: 0, people: [], badActors: [], floodFrac: 0 });
});
it('what was called before the night or after it is not counted', () => expect(rates([called(-1), called(12 * 3600 + 1)]).calls).toBe(0));
