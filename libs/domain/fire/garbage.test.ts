import { expect, it } from 'vitest';
import { type EpochS, epochS, later, OutOfRangeError, randomStream, type RandomStream } from '../quantity/index.js';
import { USUAL_SPLIT } from '../wood/index.js';
import {
  advance, airOf, beliefFromBytes, carryFire, DOORS, estimateOf, type FireBelief, kindle, type Look, REFERENCE_SHAPE, seeCheck, seeReadings, USUAL_AIR_SET,
} from './index.js';

const AT = epochS(1_800_000_000);
const FIRE = {
  shape: REFERENCE_SHAPE, seed: 3, band: { lowC: 121, highC: 127 }, wantsOutlook: false, lastLookAt: AT, readings: [],
  around: { weather: { windMPerS: 1, fromFireEndRad: 1, ambientTempC: 15, rainFrac: 0 }, air: airOf(USUAL_AIR_SET), foodLoadFrac: 0 },
};
const WILD = [Number.NaN, Infinity, -Infinity, 1e308, -1e308, -273.15, 5e-324, -0, 1200];
const any = <T>(random: RandomStream, of: readonly T[]): T => of[random.below(of.length)]!;
/** A temperature as a broken world sends it: nothing, nonsense, a jump of 200 °F, or by chance a good one. */
const temp = (random: RandomStream) => any(random, [undefined, any(random, WILD), 124 + 111 * random.normal(), 120 + 4 * random.normal()]);
const temps = (random: RandomStream) => {
  const [fireEndTempC, stackEndTempC] = [temp(random), temp(random)];
  return { ...(fireEndTempC !== undefined && { fireEndTempC }), ...(stackEndTempC !== undefined && { stackEndTempC }) };
};

function lookOf(random: RandomStream, at: EpochS): Look {
  return {
    at: later(at, -600 + random.below(660)), bed: any(random, ['low', 'fair', 'full'] as const), left: any(random, ['coals', 'some', 'most'] as const), ...temps(random),
    on: { pieces: Array.from({ length: random.below(7) }, () => USUAL_SPLIT), raked: random.next() < 0.5 },
    position: any(random, ['door', 'middle', 'throat'] as const), air: { ...USUAL_AIR_SET, door: any(random, DOORS), screen: random.next() < 0.5 },
  };
}

it('ten thousand steps of garbage leave every number finite and every fire sensible', () => {
  const random = randomStream(2);
  let belief = kindle({ shape: REFERENCE_SHAPE, at: AT, state: 'fair', ambientTempC: 15, seed: 3 });
  for (let step = 0; step < 10_000; step++) {
    const weather = { windMPerS: 20 * random.next(), fromFireEndRad: Math.PI * random.next(), ambientTempC: -20 + 50 * random.next(), rainFrac: random.next() };
    const to = later(belief.at, random.below(2) * 60 + random.below(30));
    belief = advance(belief, { weather, air: airOf({ ...USUAL_AIR_SET, door: any(random, DOORS) }), foodLoadFrac: random.next(), to });
    if (random.next() < 0.6) belief = seeReadings(belief, temps(random)).belief;
    if (random.next() < 0.04) belief = seeCheck(belief, lookOf(random, to));
    if (step % 50 === 0) sensible(belief);
  }
  sensible(belief);
}, 120_000);

it('garbage carried as a yard carries it leaves a fire that can be carried on', () => {
  const random = randomStream(5);
  let belief: Uint8Array | undefined;
  let at = AT;
  for (let step = 0; step < 300; step++) {
    const to = later(at, random.below(3) * 60);
    const readings = Array.from({ length: random.below(3) }, () => ({ until: later(to, random.below(600) - 300), ...temps(random) })).sort((a, b) => a.until - b.until);
    const look = random.next() < 0.05 ? lookOf(random, to) : undefined;
    ({ belief } = carryFire({ ...FIRE, from: belief ? { belief } : { at, state: 'fair' }, to, readings, ...(look && { look }) }));
    at = to;
  }
  sensible(beliefFromBytes(belief!));
}, 60_000);

function sensible(belief: FireBelief): void {
  expect(belief.members.every(Number.isFinite)).toBe(true);
  const { chamberTempC, bedKg, splitLeftFrac, dryKgPerS, zoneTempC } = estimateOf(belief);
  for (const tempC of [chamberTempC.p10, chamberTempC.p90, ...zoneTempC]) {
    expect(tempC).toBeGreaterThan(-55);
    expect(tempC).toBeLessThan(830);
  }
  expect(bedKg.p10).toBeGreaterThan(0);
  // Held to 2.5 kg at each correction and step; a rake may knock more off before the next.
  expect(bedKg.p90).toBeLessThanOrEqual(5);
  expect(splitLeftFrac).toBeGreaterThanOrEqual(0);
  expect(splitLeftFrac).toBeLessThanOrEqual(1);
  expect(dryKgPerS).toBeGreaterThanOrEqual(0);
}

it('a reading from the future is named and used for nothing', () => {
  const fire = { ...FIRE, from: { at: AT, state: 'fair' }, to: later(AT, 120) } as const;
  const future = carryFire({ ...fire, readings: [{ until: later(AT, 600), fireEndTempC: 130, stackEndTempC: 128 }] });
  expect(future.rejected).toEqual(['fire-end', 'stack-end']);
  expect(future.belief).toEqual(carryFire(fire).belief);
});

it('a pit with no geometry is refused, and says which measure', () => {
  const fire = { ...FIRE, shape: { ...REFERENCE_SHAPE, fireboxDiameterM: 0 }, from: { at: AT, state: 'fair' }, to: later(AT, 120) } as const;
  expect(() => carryFire(fire)).toThrow(OutOfRangeError);
  expect(() => carryFire(fire)).toThrow(/firebox diameter/);
});
