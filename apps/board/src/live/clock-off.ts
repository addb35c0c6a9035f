/** Whole seconds travel and a beat is under way for a while: less than this is no difference that anybody can know. */
const TOLD_S = 3;
/** Beyond this the server marks the device's times as uncertain; its own rule, see `deviceTime`. */
const UNCERTAIN_S = 5 * 60;

export interface ClockOff {
  readonly way: 'ahead' | 'behind';
  readonly byS: number;
  readonly uncertain: boolean;
}

/**
 * How far a device's clock is from the server's; undefined when they agree as far as can be told. Both ms since 1970. Where the server's
 * clock was set, by `setByS`, a device that agrees with either of its times is right.
 */
export function clockOff(deviceMs: number, serverMs: number, setByS = 0): ClockOff | undefined {
  const [aheadS] = [(deviceMs - serverMs) / 1000, (deviceMs - serverMs) / 1000 - setByS].sort((one, other) => Math.abs(one) - Math.abs(other)) as [number, number];
  if (Math.abs(aheadS) < TOLD_S) return undefined;
  return { way: aheadS > 0 ? 'ahead' : 'behind', byS: Math.round(Math.abs(aheadS)), uncertain: Math.abs(aheadS) > UNCERTAIN_S };
}
