import { describe, expect, it } from 'vitest';
import { footprint, onPlan, reachBelow, stepped, turnOf } from './plan-geometry.js';

const plan = { planWidthM: 34, planHeightM: 20, planTopDeg: 20 };

describe('the yard plan', () => {
  it('turns a pit by its heading against the plan’s top: heading 110 on a plan that looks to 20 lies to the right', () => {
    expect(turnOf({ fireEndHeadingDeg: 110 }, plan)).toBe(90);
    expect(turnOf({ fireEndHeadingDeg: 290 }, plan)).toBe(270);
    expect(turnOf({ fireEndHeadingDeg: 10 }, plan)).toBe(350);
  });
  it('keeps everything on it, to a tenth of a metre', () => {
    expect(onPlan({ xM: -3, yM: 25 }, plan)).toEqual({ xM: 0, yM: 20 });
    expect(onPlan({ xM: 5.04, yM: 4.96 }, plan)).toEqual({ xM: 5, yM: 5 });
  });
  it('arrow keys move by half a metre, finely by a tenth, and not beyond the edge', () => {
    expect(stepped({ xM: 5, yM: 4 }, 'ArrowRight', false, plan)).toEqual({ xM: 5.5, yM: 4 });
    expect(stepped({ xM: 5, yM: 4 }, 'ArrowUp', true, plan)).toEqual({ xM: 5, yM: 3.9 });
    expect(stepped({ xM: 0.2, yM: 4 }, 'ArrowLeft', false, plan)).toEqual({ xM: 0, yM: 4 });
    expect(stepped({ xM: 5, yM: 4 }, 'Enter', false, plan)).toBeUndefined();
  });
});

describe('a pit from above', () => {
  it('is as long as firebox and chamber, around its middle, the firebox first', () => {
    const { firebox, chamber } = footprint({ chamberLengthM: 2.4, chamberDiameterM: 0.8, fireboxLengthM: 0.6, fireboxDiameterM: 0.6, stackDiameterM: 0.15 });
    expect(firebox.y).toBe(-1.5);
    expect(firebox.y + firebox.height).toBeCloseTo(chamber.y, 12);
    expect(chamber.y + chamber.height).toBeCloseTo(1.5, 12);
  });
  it('reaches half its length below its middle when it stands upright, half its width when it lies', () => {
    const pit = { chamberLengthM: 2.4, chamberDiameterM: 0.8, fireboxLengthM: 0.6, fireboxDiameterM: 0.6, stackDiameterM: 0.15 };
    expect(reachBelow(pit, 180)).toBeCloseTo(1.5, 12);
    expect(reachBelow(pit, 270)).toBeCloseTo(0.4, 12);
  });
});
