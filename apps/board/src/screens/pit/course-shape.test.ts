import type { FirePage } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { courseShape } from './course-shape.js';

const at = (minute: number) => new Date(Date.UTC(2027, 2, 13, 8, minute)).toISOString();
const point = (minute: number, factor: number) => ({
  at: at(minute), loss: { log: Math.log(factor), sd: 0.1 }, burn: { log: 0, sd: 0.1 }, coal: { log: -1, sd: 0.1 },
});
const learned = (more: Partial<FirePage['learned']>): FirePage['learned'] => ({ now: null, course: [], setBacks: [], ...more });

describe('what was learned over the nights', () => {
  it('as set up lies in the middle, 40 % more at the upper edge; checks stand side by side', () => {
    const { lines, sameY } = courseShape(learned({ course: [point(0, 1), point(40, Math.sqrt(1.4)), point(999, 1.4)] }), 200, 100);
    expect(sameY).toBe(50);
    // Half of the logarithm of 1.4 is a quarter of the height; the edge keeps three pixels.
    expect(lines[0]!.pieces[0]!.map(([x, y]) => [x, Math.round(y * 1e6) / 1e6])).toEqual([[0, 50], [100, 25], [200, 3]]);
    expect(lines[2]!.pieces[0]!.every(([, y]) => y === 97)).toBe(true);
  });

  it('a set back breaks the lines and stands between the checks', () => {
    const { lines, setBacks } = courseShape(
      learned({ course: [point(0, 1.2), point(10, 1.2), point(20, 1)], setBacks: [{ at: at(15), by: null, reason: 'new gasket' }] }), 200, 100,
    );
    expect(lines[0]!.pieces.map(({ length }) => length)).toEqual([2, 1]);
    expect(setBacks).toEqual([150]);
  });

  it('nothing learned is nothing drawn', () => {
    expect(courseShape(learned({}), 200, 100).lines.every(({ pieces }) => pieces.length === 0)).toBe(true);
  });
});
