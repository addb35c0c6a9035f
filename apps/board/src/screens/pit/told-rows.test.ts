import type { CheckView, FirePage } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { actionDone, toldRows } from './told-rows.js';

const at = (minute: number) => new Date(Date.UTC(2027, 2, 13, 8, minute)).toISOString();
const fan = { from: at(0), stepS: 600, p10: [118, 114, 110], p50: [120, 117, 114], p90: [122, 120, 118] };
const told = (id: string, minute: number, points: readonly object[]) => ({ checkId: id, lookedAt: at(minute), advised: 'one', fan, points, outcome: null });
const rowsOf = (points: readonly object[], checks: readonly Partial<CheckView>[] = []) =>
  toldRows({ told: [told('a', 0, points), told('b', 1, [])] } as unknown as FirePage, checks as readonly CheckView[]);

describe('each check with its two sides', () => {
  it('the last check stands first, with the person and what they did where it is known', () => {
    const rows = rowsOf([], [{ id: 'a', splits: 1, size: 'standard' }]);
    expect(rows.map(({ checkId, check, asAdvised }) => [checkId, check !== undefined, asAdvised])).toEqual([['b', false, false], ['a', true, true]]);
  });

  it('what came lies inside, above or below what was told for its moment, straight between the steps', () => {
    // In 15 min, half way from step 1 to step 2: 112 to 119.
    const points = [112, 119.1, 111.9, null].map((cameC) => ({ aheadS: 900, cameC, uncompared: cameC === null ? 'touched' : null }));
    const [, row] = rowsOf(points);
    expect(row!.points.map(({ lowC, highC, side }) => [lowC, highC, side])).toEqual([[112, 119, 'inside'], [112, 119, 'above'], [112, 119, 'below'], [112, 119, null]]);
    expect(row!.points[3]!.uncompared).toBe('touched');
  });

  it('at the next look stands what had come; a band that was out at the look was out already', () => {
    const outcome = { at: at(15), cameC: 119.5, wasToLeaveAt: at(0), leftAt: at(12) };
    const [row] = toldRows({ told: [{ ...told('a', 0, []), outcome }] } as unknown as FirePage, []);
    expect(row!.outcome).toEqual({ at: at(15), cameC: 119.5, lowC: 112, highC: 119, side: 'above', wasToLeave: 'already', left: at(12) });
  });

  it('a moment beyond the fan is left out', () => {
    expect(rowsOf([{ aheadS: 3600, cameC: 100, uncompared: null }])[1]!.points).toEqual([]);
  });

  it('what was put on is named as an advice names it, and what none asks is not', () => {
    expect(actionDone({ splits: 0, size: 'standard' })).toBe('rake');
    expect(actionDone({ splits: 2, size: 'thin' })).toBe('two-thin');
    expect(actionDone({ splits: 2, size: 'offcut' })).toBe('two-offcuts');
    expect(actionDone({ splits: 2, size: 'thick' })).toBeUndefined();
    expect(actionDone({ splits: 3, size: 'standard' })).toBeUndefined();
  });
});
