import { describe, expect, it } from 'vitest';
import { clockOff } from './clock-off.js';

describe("a device's clock", () => {
  it('that agrees to within what a beat can tell is not spoken of', () => {
    expect(clockOff(10_000, 10_900)).toBeUndefined();
    expect(clockOff(12_900, 10_000)).toBeUndefined();
  });

  it('that is 45 minutes fast is told, and that its times are uncertain', () => {
    expect(clockOff(45 * 60_000, 0)).toEqual({ way: 'ahead', byS: 2700, uncertain: true });
  });

  it('that is four minutes slow is told, and only put right', () => {
    expect(clockOff(0, 240_000)).toEqual({ way: 'behind', byS: 240, uncertain: false });
  });

  it('that agrees with either of the times of a server whose clock was set is not spoken of', () => {
    expect(clockOff(600_000, 0, 600)).toBeUndefined();
    expect(clockOff(0, 0, 600)).toBeUndefined();
    expect(clockOff(900_000, 0, 600)).toEqual({ way: 'ahead', byS: 300, uncertain: false });
  });
});
