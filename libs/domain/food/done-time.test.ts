import { describe, expect, it } from 'vitest';
import { epochS, type EpochS, later } from '../quantity/index.js';
import type { CoreReading, FoodCook } from './cook.js';
import { cutByCode, STARTING_CUTS } from './cuts.js';
import { checkedCut } from './cut.js';
import { chanceDoneBy, doneByFrac, forecastDone } from './done-time.js';
import { cookingTime, cookSByFrac, earliestService, offWindow } from './planning.js';
import { truePiece } from './true-piece.js';
import { whatIf } from './what-if.js';

const HOUR = 3600;
const on = epochS(1_800_000_000);
const brisket = cutByCode('brisket')!;
const air = (tempC = 121, sdK = 3) => ({ from: on, stepS: HOUR, tempC: [tempC], sdK: [sdK] });
const cook = (more: Partial<FoodCook> = {}): FoodCook => ({ cut: brisket, pieceKg: 6.3, onAt: on, air: air(), seed: 3, members: 80, ...more });
const forecast = (one: FoodCook, now: EpochS = on) => {
  const done = forecastDone(one, now);
  if (!done.ok) throw new Error(done.refusal.code);
  return done.value;
};
const hours = (at: EpochS | undefined) => (at === undefined ? Infinity : (at - on) / HOUR);
const spread = (one: FoodCook, now: EpochS = on) => {
  const done = forecast(one, now);
  return { p10: hours(doneByFrac(done, 0.1)), p50: hours(doneByFrac(done, 0.5)), p90: hours(doneByFrac(done, 0.9)), done };
};

/** A piece with traits of its own, as if it lay in the pit. */
function realPiece(traits: Parameters<typeof truePiece>[1], one: FoodCook = cook()) {
  const { readings, doneAt } = truePiece(one, traits, 600);
  return { doneH: hours(doneAt), until: (h: number): CoreReading[] => readings.filter(({ at }) => at <= on + h * HOUR) };
}

describe('a forecast before anything is read', () => {
  it('is a distribution: sorted, with a band of at least 15 % either way', () => {
    const { p10, p50, p90, done } = spread(cook({ members: 200 }));
    expect([...done.doneAt]).toEqual([...done.doneAt].sort((a, b) => a - b));
    expect(done.doneAt.length).toBe(200);
    expect((p90 - p10) / 2 / p50).toBeGreaterThanOrEqual(0.149);
  });
  it('a brisket of 14 lb in 250 °F takes 9 to 13 h (common practice, no source: 45 to 60 minutes a pound unwrapped, less in paper)', () => {
    const { p50 } = spread(cook());
    expect(p50).toBeGreaterThan(9);
    expect(p50).toBeLessThan(13);
  });
  it('hotter is sooner, thicker is later, warmer at the start is sooner, a fire in sight is sooner', () => {
    const usual = spread(cook()).p50;
    expect(spread(cook({ air: air(135) })).p50).toBeLessThan(usual);
    expect(spread(cook({ thicknessM: 0.14 })).p50).toBeGreaterThan(usual);
    expect(spread(cook({ pieceKg: 8 })).p50).toBeGreaterThan(usual);
    expect(spread(cook({ startTempC: 18 })).p50).toBeLessThan(usual);
    expect(spread(cook({ fireWPerM2: 800 })).p50).toBeLessThan(usual);
  });
  it('the same seed gives the same forecast, another seed nearly the same', () => {
    expect(forecast(cook()).doneAt).toEqual(forecast(cook()).doneAt);
    expect(Math.abs(spread(cook({ seed: 99, members: 200 })).p50 / spread(cook()).p50 - 1)).toBeLessThan(0.06);
  });
  it('air that never gets there is said as a share, not as a date', () => {
    const done = forecast(cook({ air: air(80, 1) }));
    expect(done.neverFrac).toBe(1);
    expect(doneByFrac(done, 0.5)).toBeUndefined();
    expect(chanceDoneBy(done, later(on, 40 * HOUR))).toBe(0);
  });
  it('chance and quantile are each other\'s inverse', () => {
    const done = forecast(cook());
    for (const frac of [0.2, 0.5, 0.8]) expect(Math.abs(chanceDoneBy(done, doneByFrac(done, frac)!) - frac)).toBeLessThan(0.02);
    expect(chanceDoneBy(done, on)).toBe(0);
    expect(chanceDoneBy(done, later(on, 36 * HOUR))).toBeCloseTo(1 - done.neverFrac, 9);
  });
  it('both parts of a done rule are kept: the later decides', () => {
    const only = (done: (typeof brisket)['done']) => spread(cook({ cut: { ...brisket, done } })).p50;
    const both = only({ coreTempC: 95, tenderHoursAt90: 4 });
    expect(both).toBeGreaterThanOrEqual(only({ coreTempC: 95 }));
    expect(both).toBeCloseTo(only({ tenderHoursAt90: 4 }), 0);
  });
});

describe('corrected by a probe in the meat', () => {
  it('a slow, wet piece: readings bring the forecast to its true done time, and the band closes', () => {
    const truth = realPiece({ pace: 0.15, wet: 0.3 });
    const before = spread(cook());
    const after = spread(cook({ readings: truth.until(7) }), later(on, 7 * HOUR));
    expect(Math.abs(after.p50 - truth.doneH)).toBeLessThan(Math.abs(before.p50 - truth.doneH));
    expect(after.p90 - after.p10).toBeLessThan(before.p90 - before.p10);
    expect(truth.doneH).toBeGreaterThan(after.p10 - 0.2);
    expect(truth.doneH).toBeLessThan(after.p90 + 0.2);
  });
  it('the plateau does not fool it: on it, a straight line through the last hour is hours out, the forecast is not', () => {
    const slow = cook({ wrap: { how: 'never' }, cut: { ...brisket, done: { coreTempC: 95 } } });
    const truth = realPiece({ wet: 0.25, thick: -0.02 }, slow);
    const at = 7.5;
    const seen = truth.until(at);
    const [a, b] = [seen.at(-7)!, seen.at(-1)!];
    const lineH = at + ((95 - b.tempC) / (b.tempC - a.tempC)) * ((b.at - a.at) / HOUR);
    const after = spread({ ...slow, readings: seen }, later(on, at * HOUR));
    expect(after.done.phase).toBe('plateau');
    expect(Math.abs(lineH - truth.doneH)).toBeGreaterThan(2);
    expect(Math.abs(after.p50 - truth.doneH)).toBeLessThan(0.12 * truth.doneH);
    expect(Math.abs(after.p50 - truth.doneH)).toBeLessThan(0.5 * Math.abs(lineH - truth.doneH));
  });
  it('before the plateau a straight line is hours too early; the forecast knows what comes', () => {
    const truth = realPiece({});
    const seen = truth.until(4);
    const [a, b] = [seen.at(-7)!, seen.at(-1)!];
    const lineH = 4 + ((95 - b.tempC) / (b.tempC - a.tempC)) * ((b.at - a.at) / HOUR);
    const after = spread(cook({ readings: seen }), later(on, 4 * HOUR));
    expect(lineH).toBeLessThan(truth.doneH - 2);
    expect(Math.abs(after.p50 - truth.doneH)).toBeLessThan(1);
  });
  it('readings in any order give the same forecast, and one after now counts for nothing', () => {
    const seen = realPiece({ pace: 0.1 }).until(5);
    const now = later(on, 5 * HOUR);
    const straight = forecast(cook({ readings: seen }), now);
    expect(forecast(cook({ readings: [...seen].reverse() }), now).doneAt).toEqual(straight.doneAt);
    expect(forecast(cook({ readings: [...seen, { at: later(now, HOUR), tempC: 95 }] }), now).doneAt).toEqual(straight.doneAt);
  });
  it('a probe every ten seconds counts no more than it knows: band and middle stay beside those of one reading in ten minutes', () => {
    const few = realPiece({ pace: 0.1 }).until(5);
    const many = few.flatMap((reading, i) => {
      const next = few[i + 1] ?? reading;
      return Array.from({ length: 60 }, (_, k) => ({ at: later(reading.at, 10 * k), tempC: reading.tempC + ((next.tempC - reading.tempC) * k) / 60 })).filter(({ at }) => at <= on + 5 * HOUR);
    });
    const [a, b] = [spread(cook({ readings: few }), later(on, 5 * HOUR)), spread(cook({ readings: many }), later(on, 5 * HOUR))];
    expect(Math.abs(a.p50 - b.p50)).toBeLessThan(0.4);
  });
});

describe('readings that cannot be meat', () => {
  const truth = realPiece({});
  const now = later(on, 5 * HOUR);
  const good = truth.until(4.5);
  const verdictOf = (reading: CoreReading, before = good) => forecast(cook({ readings: [...before, reading] }), now).verdicts.at(-1);
  it('pulled out it reads the pit: said so, and the forecast stays where it was', () => {
    const out = { at: later(on, 4.8 * HOUR), tempC: 119 };
    expect(verdictOf(out)).toBe('reads-pit-air');
    expect(Math.abs(spread(cook({ readings: [...good, out] }), now).p50 - spread(cook({ readings: good }), now).p50)).toBeLessThan(0.01);
  });
  it('lying outside it reads the night', () => expect(verdictOf({ at: later(on, 4.8 * HOUR), tempC: 14 })).toBe('reads-outside-air'));
  it('hotter than the hottest air it has been in', () => expect(verdictOf({ at: later(on, 4.8 * HOUR), tempC: 160 })).toBe('hotter-than-its-air'));
  it('before it went on', () => expect(verdictOf({ at: later(on, -60), tempC: 4 })).toBe('before-on'));
  it('a jump is held back; put back elsewhere and steady there, it is believed again', () => {
    const jumped = [4.8, 5.1, 5.4].map((h) => ({ at: later(on, h * HOUR), tempC: good.at(-1)!.tempC + 14 + 5 * (h - 4.8) }));
    const { verdicts } = forecast(cook({ readings: [...good, ...jumped] }), later(on, 6 * HOUR));
    expect(verdicts.slice(-3)).toEqual(['jumped', 'jumped', 'probe-moved']);
  });
  it('honest readings are all used, right through the plateau', () => {
    const all = truth.until(9.5);
    expect(new Set(forecast(cook({ readings: all }), later(on, 9.5 * HOUR)).verdicts)).toEqual(new Set(['used']));
  });
});

describe('what would happen if', () => {
  const now = later(on, 2 * HOUR);
  const shift = (change: Parameters<typeof whatIf>[2], one = cook()) => {
    const answer = whatIf(one, now, change);
    if (!answer.ok) throw new Error(answer.refusal.code);
    return (answer.value.middleS ?? NaN) / 60;
  };
  it('the lid open for ten minutes costs some minutes, for half an hour more', () => {
    const ten = shift({ what: 'opened', at: now, forS: 600, outsideC: 15 });
    expect(ten).toBeGreaterThan(1);
    expect(ten).toBeLessThan(45);
    expect(shift({ what: 'opened', at: now, forS: 1800, outsideC: 15 })).toBeGreaterThan(ten);
  });
  it('a slump of the fire by 30 K for two hours makes it later, a hotter fire earlier', () => {
    expect(shift({ what: 'slump', at: now, forS: 7200, byK: 30 })).toBeGreaterThan(10);
    expect(shift({ what: 'hotter', at: now, byK: 14 })).toBeLessThan(-20);
  });
  it('foil on before the plateau saves hours; none at all costs time', () => {
    const bare = cook({ wrap: { how: 'never' } });
    expect(shift({ what: 'wrap', at: later(on, 5 * HOUR), kind: 'foil' }, bare)).toBeLessThan(-60);
    expect(shift({ what: 'no-wrap' })).toBeGreaterThan(5);
  });
  it('wrapped already cannot be wrapped', () => {
    const answer = whatIf(cook({ wrap: { how: 'at', at: on, kind: 'foil' } }), now, { what: 'wrap', at: now, kind: 'paper' });
    expect(answer).toEqual({ ok: false, refusal: { code: 'already-wrapped' } });
  });
});

describe('for planning', () => {
  it('every starting cut is a valid one and gets done in 135 °C', () => {
    expect(STARTING_CUTS.map((cut) => [cut.code, checkedCut(cut).ok])).toEqual(STARTING_CUTS.map((cut) => [cut.code, true]));
    for (const cut of STARTING_CUTS) {
      const time = cookingTime({ cut, pieceKg: cut.usualKg, airTempC: 135, seed: 1 });
      expect(time.ok && cookSByFrac(time.value, 0.5)! > 900 && time.value.neverFrac === 0, cut.code).toBe(true);
    }
  });
  it('an impossible service is refused with the earliest time and why', () => {
    const ask = { now: on, lateFrac: 0.05, serviceAt: later(on, 4 * HOUR) };
    const answer = earliestService(cook(), ask);
    expect(answer.ok).toBe(false);
    if (answer.ok || answer.refusal.code !== 'service-too-early') throw new Error('refused for the time');
    expect(answer.refusal.why).toBe('cooking');
    expect(answer.refusal.earliestAt).toBe(later(on, answer.refusal.cookS + brisket.rest.leastS));
    expect(earliestService(cook(), { ...ask, serviceAt: answer.refusal.earliestAt }).ok).toBe(true);
  });
  it('done already, the rest alone stands between it and the plate', () => {
    const seen = realPiece({}).until(12);
    const now = later(on, 12 * HOUR);
    const answer = earliestService(cook({ readings: seen }), { now, lateFrac: 0.05, serviceAt: later(now, 600) });
    expect(answer.ok === false && answer.refusal.code === 'service-too-early' && answer.refusal.why).toBe('rest');
  });
  it('a service is reached from a window: rest before it, hold no longer than it may', () => {
    expect(offWindow(brisket, on)).toEqual({ earliest: on - 14 * HOUR, latest: on - HOUR });
  });
});

describe('refused with what to put right', () => {
  it.each([
    { what: 'no weight', more: { pieceKg: 0 }, code: 'weight-missing' }, { what: 'a weight that is no number', more: { pieceKg: NaN }, code: 'weight-missing' }, { what: 'half a ton', more: { pieceKg: 500 }, code: 'piece-weight-out-of-range' },
    { what: 'paper-thin', more: { thicknessM: 0.001 }, code: 'thickness-out-of-range' }, { what: 'no air', more: { air: { from: on, stepS: 60, tempC: [] } }, code: 'air-missing' },
    { what: 'air of a forge', more: { air: air(900) }, code: 'air-out-of-range' }, { what: 'air that is no number', more: { air: air(NaN) }, code: 'air-out-of-range' }, { what: 'meat that is cooked', more: { startTempC: 80 }, code: 'start-out-of-range' },
  ])('$what: $code', ({ more, code }) => expect(forecastDone(cook(more), on)).toMatchObject({ ok: false, refusal: { code } }));
  it('a cut without a done rule, a wrap after done, a composition that is not whole, a field out of range', () => {
    expect(checkedCut({ ...brisket, done: {} })).toMatchObject({ refusal: { code: 'done-rule-missing' } });
    expect(checkedCut({ ...brisket, wrap: { kind: 'foil', atCoreC: 97 } })).toMatchObject({ refusal: { code: 'wrap-after-done' } });
    expect(checkedCut({ ...brisket, composition: { ...brisket.composition, fatFrac: 0.5 } })).toMatchObject({ refusal: { code: 'composition-not-whole' } });
    expect(checkedCut({ ...brisket, usualKg: 0 })).toMatchObject({ refusal: { code: 'cut-value-out-of-range', field: 'usualKg' } });
  });
});
