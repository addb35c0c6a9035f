import { describe, expect, it } from 'vitest';
import { epochS, type EpochS, later } from '../quantity/index.js';
import { airFor } from './air-ahead.js';
import type { CoreReading, FoodCook } from './cook.js';
import { cutByCode } from './cuts.js';
import { forecastAll, ranAsForecast } from './forecast-all.js';
import type { Carried } from './see-readings.js';
import { truePiece } from './true-piece.js';

const on = epochS(1_800_000_000);
const cut = cutByCode('brisket')!;
const minutes = (count: number) => later(on, count * 60);
/** The chamber every five minutes, wandering a little. */
const chamber = Array.from({ length: 200 }, (_, i) => ({ at: minutes(5 * i), tempC: 121 + ((7 * i) % 5) - 2, zoneShiftK: (i % 3) - 1 }));
const piece = truePiece({ cut, pieceKg: 6.3, onAt: on, air: { from: on, stepS: 300, tempC: chamber.map(({ tempC }) => tempC) }, seed: 1 }, { pace: 0.08, wet: -0.1 }, 600);

/** The cook as it is known at a time; the zone stands otherwise beside the chamber at every look. */
const knownAt = (now: EpochS, change: (readings: readonly CoreReading[]) => readonly CoreReading[] = (readings) => readings): FoodCook => ({
  cut, pieceKg: 6.3, onAt: on, seed: 5, members: 20, readings: change(piece.readings.filter(({ at }) => at <= now)),
  air: airFor({ seen: chamber.filter(({ at }) => at <= now), onAt: on, now, bandMiddleC: 121, zoneShiftK: ((now / 60) % 7) - 3 }),
});
const look = (cook: FoodCook, now: EpochS, carried?: Carried) => forecastAll({ cooks: [{ cook, ...(carried && { carried: structuredClone(carried) }) }], now })[0]!;

describe('a look that goes on from the one before', () => {
  it('says the same to the last bit as one that starts anew, all night long', () => {
    let carried: Carried | undefined;
    for (let at = 20; at <= 600; at += 40) {
      const cook = knownAt(minutes(at));
      const made = look(cook, minutes(at), carried);
      expect(made).toEqual(look(cook, minutes(at)));
      carried = made.carried ?? carried;
    }
  });
  it('really goes on: what was laid aside decides', () => {
    const { carried } = look(knownAt(minutes(300)), minutes(300));
    const spoilt = structuredClone(carried!);
    spoilt.roll.rows[1]!.fill(40);
    const cook = knownAt(minutes(320));
    expect(look(cook, minutes(320), spoilt).done).not.toEqual(look(cook, minutes(320)).done);
  });
  it.each([
    { what: 'a reading of hours ago that was put right', change: (readings: readonly CoreReading[]) => readings.map((one, i) => (i === 4 ? { ...one, tempC: one.tempC + 3 } : one)) },
    { what: 'a reading that comes late', change: (readings: readonly CoreReading[]) => [...readings, { at: minutes(64), tempC: 40 }] },
    { what: 'a reading less', change: (readings: readonly CoreReading[]) => readings.filter((_, i) => i !== 12) },
    { what: 'a probe pulled out just now', change: (readings: readonly CoreReading[]) => readings.map((one, i) => (i > readings.length - 3 ? { ...one, tempC: 118 } : one)) },
  ])('$what is met as if nothing had been carried', ({ change }) => {
    const { carried } = look(knownAt(minutes(400)), minutes(400));
    const cook = knownAt(minutes(420), change);
    expect(look(cook, minutes(420), carried)).toEqual(look(cook, minutes(420)));
  });
  it.each([{ pieceKg: 5 }, { seed: 6 }, { members: 30 }, { wrap: { how: 'never' as const } }, { startTempC: 12 }])('a cook that is another, %o, starts anew', (other) => {
    const { carried } = look(knownAt(minutes(400)), minutes(400));
    const cook = { ...knownAt(minutes(420)), ...other };
    expect(look(cook, minutes(420), carried)).toEqual(look(cook, minutes(420)));
  });
});

describe('readings beside a forecast', () => {
  const { done } = look(knownAt(minutes(200)), minutes(200));
  if (!done.ok) throw new Error(done.refusal.code);
  const said = (at: EpochS) => done.value.core.p50[Math.round((at - on) / done.value.core.stepS)]!;
  it('near its middle they say nothing new; away from it, or shortly before the end, they do', () => {
    const at = minutes(220);
    expect(ranAsForecast(done.value, [{ at, tempC: said(at) + 1 }], at)).toBe(true);
    expect(ranAsForecast(done.value, [{ at, tempC: said(at) + 1 }, { at, tempC: said(at) - 3 }], at)).toBe(false);
    const late = later(done.value.p50At!, -1800);
    expect(ranAsForecast(done.value, [{ at: late, tempC: said(late) }], late)).toBe(false);
  });
});
