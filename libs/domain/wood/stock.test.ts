import { describe, expect, it } from 'vitest';
import { epochS, HOUR_S, later } from '../quantity/index.js';
import { cartLasts, correctionOf, yardLasts } from './index.js';

const now = epochS(1_800_000_000);
const cart = { pitId: 'p', dryKg: 18, dryKgPerS: 1.8 / 2700, rateDeviationFrac: 0.2, until: later(now, 12 * HOUR_S), haulS: 15 * 60 };

describe('a cart through the night', () => {
  it('10 splits of 1.8 kg at one per 45 min last 7.5 hours; one time in ten only 5.97: 7.5 / (1 + 1.2816 x 0.2)', () => {
    const lasts = cartLasts(cart, now);
    expect(lasts.lastsS / HOUR_S).toBeCloseTo(7.5, 3);
    expect(lasts.lastsAtLeastS / HOUR_S).toBeCloseTo(5.97, 2);
    expect(lasts.state).toBe('haul-later');
    expect((lasts.haulBy! - now) / HOUR_S).toBeCloseTo(5.97 - 0.25, 2);
    expect(lasts.missingKg).toBeCloseTo((1.8 / 2700) * 1.25632 * 12 * HOUR_S - 18, 2);
  });
  it('P19: a cart of 12 splits lasts one pit 8 to 10 hours (common practice, no source)', () => {
    const hours = cartLasts({ ...cart, dryKg: 12 * 1.8 }, now).lastsS / HOUR_S;
    expect(hours).toBeGreaterThanOrEqual(8);
    expect(hours).toBeLessThanOrEqual(10);
  });
  it('the word to haul comes half an hour before it must be done; an empty cart says so', () => {
    expect(cartLasts({ ...cart, dryKg: 2 }, now).state).toBe('haul-now');
    expect(cartLasts({ ...cart, dryKg: 0 }, now).state).toBe('empty');
    expect(cartLasts({ ...cart, until: later(now, HOUR_S) }, now)).toMatchObject({ state: 'lasts', haulBy: undefined, missingKg: 0 });
  });
  it('a pit in gusts that burns 30 % more calls earlier', () => {
    expect(cartLasts({ ...cart, dryKgPerS: cart.dryKgPerS * 1.3 }, now).haulBy!).toBeLessThan(cartLasts(cart, now).haulBy!);
  });
});

describe('the yard through the night', () => {
  const fires = [cart, { ...cart, pitId: 'q', until: later(now, 6 * HOUR_S) }]; // by hand: 28.8 + 14.4 kg
  it('needs the sum of its fires; spreads add as squares', () => {
    const { neededKg, neededAtMostKg, leftKg } = yardLasts(fires, 10, now);
    expect(neededKg).toBeCloseTo(43.2, 6);
    expect(neededAtMostKg - neededKg).toBeCloseTo(1.2816 * Math.hypot(28.8 * 0.2, 14.4 * 0.2), 6);
    expect(leftKg).toBe(46);
  });
  it.each([[20, 'enough'], [8, 'tight'], [5, 'short']] as const)('with %d kg in the stack it is %s', (stackKg, state) => {
    expect(yardLasts(fires, stackKg, now).state).toBe(state);
  });
  it('short wood ends while one fire still burns: 36 kg, 28.8 in six hours by two, then 7.2 in three more', () => {
    expect(yardLasts(fires, 0, now).lastsS! / HOUR_S).toBeCloseTo(9, 3);
  });
  it('no fire needs nothing', () => {
    expect(yardLasts([], 0, now)).toMatchObject({ neededKg: 0, state: 'enough' });
  });
});

describe('a recount', () => {
  it('adds what is found and keeps its reason', () => {
    expect(correctionOf(40, { found: 37, bookSeen: 40, reason: 'three were rotten' })).toEqual({ ok: true, value: { pieces: -3 } });
  });
  it.each([
    { what: 'below zero', count: { found: -1, reason: 'x' }, code: 'counted-below-zero' },
    { what: 'half a split', count: { found: 2.5, reason: 'x' }, code: 'counted-below-zero' },
    { what: 'without a reason', count: { found: 2, reason: ' ' }, code: 'reason-missing' },
    { what: 'of a stack that changed meanwhile', count: { found: 2, bookSeen: 41, reason: 'x' }, code: 'counted-meanwhile' },
  ])('$what is refused with $code', ({ count, code }) => {
    const result = correctionOf(40, count);
    expect(result.ok ? 'taken' : result.refusal.code).toBe(code);
  });
});
