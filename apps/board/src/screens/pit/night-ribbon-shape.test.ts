import type { FirePage } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { fanAt, nightRibbonShape } from './night-ribbon-shape.js';

const at = (minute: number) => new Date(Date.UTC(2027, 2, 13, 8, minute)).toISOString();
const ms = (minute: number) => Date.parse(at(minute));
const fan = (minute: number, p50: readonly number[]) => ({
  from: at(minute), stepS: 600, p10: p50.map((tempC) => tempC - 4), p50: [...p50], p90: p50.map((tempC) => tempC + 4),
});
const told = (id: string, minute: number, p50: readonly number[]) => ({ checkId: id, lookedAt: at(minute), advised: null, fan: fan(minute, p50), points: [], outcome: null });
const pageOf = (more: Partial<FirePage>): FirePage =>
  ({
    pitId: 'p',
    night: { shiftId: 's', from: at(0), until: at(100), band: { lowC: 118, highC: 124 } },
    nights: [],
    line: [],
    told: [],
    skill: [],
    learned: { now: null, course: [], setBacks: [] },
    unused: [],
    ...more,
  }) as unknown as FirePage;
const shapeOf = (page: FirePage) => nightRibbonShape({ page, fromMs: ms(0), untilMs: ms(100), width: 1000, height: 200 });

describe('the ribbon of one fire over a night', () => {
  it('the middle of the band lies in the middle, ten pixels a minute', () => {
    const { band, told: [first] } = shapeOf(pageOf({ told: [told('a', 10, [121, 121])] }));
    expect((band.top + band.bottom) / 2).toBe(100);
    // 3 K above the middle of 32 K to the edge: 100 - 3/32 of 100 px.
    expect(band.top).toBeCloseTo(90.625, 6);
    expect(first!.x).toBe(100);
    expect(first!.middle).toEqual([[100, 100], [200, 100]]);
  });

  it('a fan is drawn until the next forecast is made, the last one to its own end', () => {
    const { told: shapes } = shapeOf(pageOf({ told: [told('a', 0, [121, 120, 119, 118, 117]), told('b', 20, [121, 121, 121])] }));
    expect(shapes[0]!.middle.map(([x]) => x)).toEqual([0, 100, 200]);
    expect(shapes[0]!.fan).toHaveLength(6);
    expect(shapes[1]!.middle.map(([x]) => x)).toEqual([200, 300, 400]);
  });

  it('what was measured and what was only estimated are lines of their own that meet; a gap joins nothing', () => {
    const line = [
      { at: at(0), tempC: 121, measured: true }, { at: at(2), tempC: 121, measured: true }, { at: at(4), tempC: 121, measured: false },
      { at: at(40), tempC: 121, measured: false },
    ];
    const shape = shapeOf(pageOf({ line })).line;
    expect(shape.map(({ measured, points }) => [measured, points.length])).toEqual([[true, 3], [false, 1], [false, 1]]);
  });

  it('where what came left the fan is marked, and only there; an estimate is held against nothing', () => {
    const line = [2, 4, 6, 8, 10].map((minute) => ({ at: at(minute), tempC: minute === 6 || minute === 8 ? 128 : 121, measured: true }));
    const one = [told('a', 0, [121, 121, 121])];
    expect(shapeOf(pageOf({ line, told: one })).outside).toEqual([{ x: 50, width: 30 }]);
    expect(shapeOf(pageOf({ line: line.map((point) => ({ ...point, measured: false })), told: one })).outside).toEqual([]);
  });

  it('a pit that is far too cold stays on the ribbon at its edge', () => {
    const shape = shapeOf(pageOf({ line: [{ at: at(0), tempC: 20, measured: true }, { at: at(2), tempC: 20, measured: true }] }));
    expect(shape.line[0]!.points.every(([, y]) => y === 196)).toBe(true);
  });
});

describe('the fan at an instant', () => {
  it('lies straight between its points, and says nothing beyond them', () => {
    const one = told('a', 0, [120, 124]);
    expect(fanAt(one, ms(5))).toEqual({ p10: 118, p90: 126 });
    expect(fanAt(one, ms(10))).toEqual({ p10: 120, p90: 128 });
    expect(fanAt(one, ms(11))).toBeUndefined();
    expect(fanAt(one, ms(-1))).toBeUndefined();
  });
});
