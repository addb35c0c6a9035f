import type { WoodyardView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { answersOf } from './answers.js';
import { curveShape } from './curve-shape.js';
import { pullPicture } from './pull-rows.js';

const nowMs = Date.parse('2027-03-01T00:00:00Z');
const lot = (lotId: string, state: 'ready' | 'not-yet', readyAt: string | null, more: object = {}) => ({
  lotId, state, readyAt, earliestAt: readyAt, latestAt: null, moisture: 0.2, deviationFrac: 0.02, readyFrac: 0.3, readings: [], curve: [{ at: '2027-03-01T00:00:00Z', moisture: 0.2, low: 0.18, high: 0.22 }, { at: '2027-08-31T00:00:00Z', moisture: 0.14, low: 0.12, high: 0.16 }], ...more,
});
const view = {
  lots: [lot('dry', 'ready', '2027-03-01T00:00:00Z'), lot('wet', 'not-yet', '2027-07-01T00:00:00Z')],
  trim: [{ splits: 5, cuts: 5, short: true }, { splits: 3, cuts: 6, short: false }],
  carts: [{ pitId: 'a', haulBy: '2027-03-01T04:00:00Z', state: 'haul-later' }, { pitId: 'b', haulBy: '2027-03-01T01:00:00Z', state: 'haul-now' }, { pitId: 'c', haulBy: null, state: 'lasts' }],
  yard: { state: 'tight' }, purchases: [{ cords: 0.75, how: 'green', orderGreenBy: '2027-03-20T00:00:00Z', orderSeasonedBy: '2028-01-01T00:00:00Z' }],
} as unknown as WoodyardView;

describe('the woodyard in one look', () => {
  it('ready, trim, buy, lasts', () => {
    expect(answersOf(view, (id) => (id === 'dry' ? 40 : 100))).toEqual({
      ready: { lots: 1, splits: 40, next: { lotId: 'wet', at: '2027-07-01T00:00:00Z' } },
      trim: { splits: 8, cuts: 11, short: true },
      buy: { cords: 0.75, by: '2027-03-20T00:00:00Z', how: 'green' },
      lasts: { state: 'tight', haul: { pitId: 'b', by: '2027-03-01T01:00:00Z', now: true } },
    });
  });
  it('an empty yard has answers too', () => {
    expect(answersOf({ lots: [], trim: [], carts: [], purchases: [], yard: { state: 'enough' } } as never, () => 0)).toMatchObject({ buy: undefined, lasts: { state: 'enough', haul: undefined } });
  });
});

it('a drying lot as a picture: now a quarter in, drier lies lower, ready where it will be', () => {
  const shape = curveShape(view.lots[1]!, { nowMs, width: 485, height: 100, targetFrac: 0.15 });
  expect(shape.nowX).toBeCloseTo(120, 6); // 120 of 485 days
  expect(shape.ready!.x).toBeCloseTo(120 + 122, 0);
  expect(shape.ready!.untilX).toBe(485);
  const heights = [...shape.line.matchAll(/[ML][\d.]+ ([\d.]+)/g)].map((match) => Number(match[1]));
  expect(heights[1]).toBeGreaterThan(heights[0]!);
  expect(shape.months.map(({ at }) => new Date(at).getUTCMonth())).toEqual([0, 3, 6, 9, 0].slice(0, shape.months.length));
});

it('wood per pit and hour: boxes fill the night, what lies on the cart is not hauled', () => {
  const load = (pitId: string, from: string, until: string, wood: object[], shortJ = 0) => ({ pitId, from, until, wood, needJ: 100, heatJ: 100, shortJ, reserveShortJ: 0 });
  const picture = pullPicture({ loads: [
    load('a', '2027-03-01T00:00:00Z', '2027-03-01T06:00:00Z', [{ lotId: 'dry', pieces: 8, isOnCart: true, isTrimmed: false }, { lotId: 'wet', pieces: 2, isOnCart: false, isTrimmed: true }, { lotId: 'dry', pieces: 5, isOnCart: false, isOffcut: true }]),
    load('a', '2027-03-01T06:00:00Z', '2027-03-01T12:00:00Z', [], 25), load('b', '2027-03-01T00:00:00Z', '2027-03-01T12:00:00Z', []),
  ] } as never, nowMs + 3 * 3_600_000);
  expect(picture.rows.map(({ pitId, loads }) => [pitId, loads.map(({ from, width }) => [from, width])])).toEqual([['a', [[0, 0.5], [0.5, 0.5]]], ['b', [[0, 1]]]]);
  expect(picture.rows[0]!.loads[0]).toMatchObject({ haul: [{ lotId: 'wet', pieces: 2 }], there: [{ lotId: 'dry', pieces: 8 }], offcuts: [{ lotId: 'dry', pieces: 5 }] });
  expect(picture.rows[0]!.loads[1]!.shortFrac).toBe(0.25);
  expect(picture.nowFrac).toBe(0.25);
  expect(picture.hours).toHaveLength(6);
});
