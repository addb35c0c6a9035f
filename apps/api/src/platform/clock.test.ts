import type { YardId } from '@stokehold/domain/quantity';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Clock, steppedMs } from './clock.js';

const before = { systemMs: 1_800_000_000_000, steadyMs: 5000, upMs: 900_000 };
const after = (more: { system: number; steady: number; up: number }) => steppedMs(before, { systemMs: before.systemMs + more.system, steadyMs: before.steadyMs + more.steady, upMs: before.upMs + more.up });

it.each([
  { what: 'time passes', of: { system: 1000, steady: 1000, up: 1000 }, is: 0 },
  { what: 'a busy process looks again after a minute', of: { system: 60_000, steady: 60_000, up: 60_000 }, is: 0 },
  { what: 'the clock is set ahead by ten minutes', of: { system: 601_000, steady: 1000, up: 1000 }, is: 600_000 },
  { what: 'it is set back by an hour', of: { system: -3_599_000, steady: 1000, up: 1000 }, is: -3_600_000 },
  { what: 'a laptop slept for two hours: that time passed', of: { system: 7_201_000, steady: 1000, up: 7_201_000 }, is: 0 },
  { what: 'whole seconds of the clock that never stands still are no sleep', of: { system: 1000, steady: 1000, up: 2000 }, is: 0 },
])('$what', ({ of, is }) => {
  expect(after(of)).toBe(is);
});

describe('a machine whose clock is set while the house runs', () => {
  afterEach(() => void vi.restoreAllMocks());
  const set = (byMs: number) => {
    const real = Date.now.bind(Date);
    vi.spyOn(Date, 'now').mockImplementation(() => real() + byMs);
  };

  it('the house goes by its time of before, and knows how far the machine is ahead; a practice night has a time of its own', () => {
    const clock = new Clock();
    const yard = 'y' as YardId;
    clock.giveOwnTime(yard, { now: () => 7 as never, speed: 1 });
    const was = clock.real();
    set(600_000);
    expect(clock.real() - was).toBeLessThanOrEqual(1);
    expect([clock.aheadS(), clock.aheadS(yard)]).toEqual([600, 0]);
  });

  it('set back to where it was, it is right again; set by less than a second, it is believed', () => {
    const clock = new Clock();
    set(600_000);
    expect(clock.aheadS()).toBe(600);
    vi.restoreAllMocks();
    expect(clock.aheadS()).toBe(0);
    set(900);
    expect(clock.aheadS()).toBe(0);
  });

  it('the new time is taken over when that is asked for, and so is the time of another process', () => {
    const clock = new Clock();
    const was = clock.real();
    set(-3_600_000);
    expect(clock.aheadS()).toBe(-3600);
    clock.takeOver();
    expect([clock.aheadS(), Math.round((clock.real() - was) / 60)]).toEqual([0, -60]);
    clock.takeOver(-3600);
    expect(clock.real() - was).toBeLessThanOrEqual(1);
  });
});
