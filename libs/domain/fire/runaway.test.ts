import { describe, expect, it } from 'vitest';
import { epochS, randomStream } from '../quantity/index.js';
import { type RawReading, runningAway } from './index.js';

const NOW = epochS(1_800_000_000);
/** Readings every ten seconds over the last `minutes`, rising by `fPerMin` °F a minute, with a gauge's noise. */
const rising = (fPerMin: number, minutes = 3, noiseK = 0.6, seed = 1): RawReading[] => {
  const random = randomStream(seed);
  return Array.from({ length: minutes * 6 + 1 }, (_, nth) => ({
    takenAt: epochS(NOW - minutes * 60 + nth * 10), tempC: 124 + (fPerMin / 1.8) * (nth / 6) + noiseK * random.normal(),
  }));
};

describe('a temperature that runs away', () => {
  it.each([
    // Burning grease of 10, 20 and 40 kW raises the fire end by 28, 56 and 111 °F in the first minute: heat balance of the model, no measured fire.
    [28], [56], [111],
  ])('is called when the fire end climbs %d °F in a minute', (fPerMin) => {
    expect(runningAway({ fireEnd: rising(fPerMin, 1), stackEnd: rising(fPerMin / 2, 1), now: NOW })).toMatchObject({ code: 'running-away', end: 'fire-end' });
  });
  it('is not called by the fastest that a fed fire does, 10 °F a minute, whatever the noise of the gauge', () => {
    for (let seed = 0; seed < 500; seed++) expect(runningAway({ fireEnd: rising(10, 3, 0.6, seed), stackEnd: rising(6, 3, 0.6, seed + 1), now: NOW })).toBeUndefined();
  });
  it('names the end that climbs faster, and how fast', () => {
    const found = runningAway({ fireEnd: rising(18), stackEnd: rising(30), now: NOW });
    expect(found?.end).toBe('stack-end');
    expect(Math.abs((found?.riseKPerMin ?? 0) * 1.8 - 30)).toBeLessThan(4);
  });
  it('is not called by a probe that leaps, by one that went silent, or by no probe', () => {
    for (const leapK of [16, 25, 110]) for (let from = 1; from < 19; from++) {
      const leap = rising(0).map((one, nth) => (nth >= from ? { ...one, tempC: one.tempC + leapK } : one));
      expect(runningAway({ fireEnd: leap, stackEnd: [], now: NOW })).toBeUndefined();
    }
    expect(runningAway({ fireEnd: rising(60), stackEnd: [], now: epochS(NOW + 300) })).toBeUndefined();
    expect(runningAway({ fireEnd: [], stackEnd: [{ takenAt: NOW, tempC: Number.NaN }], now: NOW })).toBeUndefined();
  });
  it('is not called by a fire that is being lit, 17 °F a minute up to 220 °F, and is by one that climbs so above 250 °F', () => {
    const lit = (lastC: number) => rising(17).map((one, _, all) => ({ ...one, tempC: one.tempC - all.at(-1)!.tempC + lastC }));
    expect(runningAway({ fireEnd: lit(104), stackEnd: [], now: NOW })).toBeUndefined();
    expect(runningAway({ fireEnd: lit(135), stackEnd: [], now: NOW })).toMatchObject({ code: 'running-away' });
  });
  it('is not called by a lone spike, at the moment that it is the newest reading nor after', () => {
    for (const spikeK of [10, 20, 35]) {
      for (let back = 0; back < 19; back++) {
        const spiked = rising(0).map((one, nth, all) => (nth === all.length - 1 - back ? { ...one, tempC: one.tempC + spikeK } : one));
        expect(runningAway({ fireEnd: spiked, stackEnd: [], now: NOW })).toBeUndefined();
      }
    }
  });
  it('is called one reading later where every reading leaps, as under burning grease of 90 kW', () => {
    expect(runningAway({ fireEnd: rising(250, 1), stackEnd: [], now: NOW })).toMatchObject({ code: 'running-away', end: 'fire-end' });
  });
});
