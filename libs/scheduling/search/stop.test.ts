import { describe, expect, it } from 'vitest';
import { afterIterations, whicheverFirst, whileWaited } from './index.js';

describe('a search that somebody waits for', () => {
  const rule = whicheverFirst(whileWaited(400, 6000), afterIterations(10_000));

  it('ends after its iterations, before them where what is found is enough, after them where it falls short', () => {
    expect([399, 400].map((iterations) => rule({ iterations }))).toEqual([false, true]);
    expect(rule({ iterations: 0, isEnough: true })).toBe(true);
    expect([400, 5999, 6000].map((iterations) => rule({ iterations, fallsShort: true }))).toEqual([false, false, true]);
  });

  it('divides its time as one of its usual iterations, and never makes fewer where it falls short', () => {
    expect(rule.most).toBe(400);
    expect(whileWaited(400, 100)({ iterations: 399, fallsShort: true })).toBe(false);
  });
});
