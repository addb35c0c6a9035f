import { describe, expect, it } from 'vitest';
import { courseOf, evenPiece } from './after-pit.js';
import { FOOD_CODE_2022 } from './limits/food-code-2022.js';
import { FSIS_B_OPTION_1 } from './limits/fsis-appendix-b-2021.js';
import { courseKeeps, thickestThatCools, whenToPortion } from './portioning.js';

const HOUR = 3600;
const composition = { waterFrac: 0.62, proteinFrac: 0.18, fatFrac: 0.19, ashFrac: 0.01 };
const code = FOOD_CODE_2022.cooling;
const chiller = { where: 'moving-chiller' as const, airC: 3, forS: 14 * HOUR };
const brisket = evenPiece({ composition, halfM: 0.06, exponent: 0.6, tempC: 62 });

describe('when to portion', () => {
  it('a whole brisket of 12 cm in moving air of 3 °C fails the Food Code and Appendix B alike', () => {
    const course = courseOf(brisket, [chiller]);
    expect(courseKeeps(course, code).kept).toBe(false);
    expect(courseKeeps(course, FSIS_B_OPTION_1).kept).toBe(false);
  });
  it('so it is cut, and the time to cut is the last that keeps both stages', () => {
    const advice = whenToPortion(code, { piece: brisket, stay: chiller, thicknessM: 0.025 });
    expect(advice.code).toBe('cut-by');
    if (advice.code !== 'cut-by') return;
    expect(advice.byS).toBeGreaterThan(600);
    // The clock of two hours starts when the core passes 135 °F, which takes it the better part of an hour.
    expect(advice.byS).toBeLessThan(3 * HOUR);
    const later = whenToPortion(code, { piece: brisket, stay: chiller, thicknessM: 0.05 });
    expect(later.code === 'cut-by' ? later.byS : 0).toBeLessThan(advice.byS);
  });
  it('slices as thick as the piece do not help; thin sausage needs no knife', () => {
    expect(whenToPortion(code, { piece: brisket, stay: chiller, thicknessM: 0.12 }).code).toBe('too-slow-even-cut');
    expect(whenToPortion(code, { piece: evenPiece({ composition, halfM: 0.012, exponent: 1, tempC: 70 }), stay: chiller, thicknessM: 0.02 }).code).toBe('cools-whole');
  });
  it('the thickest that cools keeps the limit, a fifth thicker breaks it; iced water bears more than air', () => {
    const ask = { composition, fromC: 62, stay: chiller };
    const thick = thickestThatCools(code, ask)!;
    const kept = (thicknessM: number) => courseKeeps(courseOf(evenPiece({ composition, halfM: thicknessM / 2, exponent: 0, tempC: 62 }), [chiller]), code).kept;
    expect([kept(thick), kept(1.2 * thick)]).toEqual([true, false]);
    expect(thickestThatCools(code, { ...ask, stay: { where: 'ice-bath', airC: 0, forS: 14 * HOUR } })).toBeGreaterThan(thick);
    expect(thick).toBeLessThan(0.1016); // advice of food handlers' schools: at most 4 in
  });
  it('air that is not cold enough never does', () => expect(thickestThatCools(code, { composition, fromC: 62, stay: { ...chiller, airC: 8 } })).toBeUndefined());
});
