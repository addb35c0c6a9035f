import { describe, expect, it } from 'vitest';
import { figuresOf } from './figures.js';
import { scaleOf, type ShownAs } from './scale.js';
import { typedNumber } from './typed-number.js';

const us = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
const metric = figuresOf({ units: 'metric', timeZone: 'America/Chicago', language: 'es' });
const blank = '\u00a0';

describe('figures', () => {
  it.each([
    // Exact by NIST SP 811 (2008), appendix B.8; worked by hand.
    { as: 'temp', si: 121.11, shown: `250${blank}°F` },
    { as: 'temp', si: -17.9, shown: `0${blank}°F` },
    { as: 'rise', si: 5, shown: `9${blank}°F` },
    { as: 'mass', si: 1, shown: `2.2${blank}lb` },
    { as: 'length', si: 0.4064, shown: `16.0${blank}in` },
    { as: 'walk', si: 36.6, shown: `40${blank}yd` },
    { as: 'speed', si: 4.0234, shown: `9${blank}mph` },
    { as: 'ground', si: 12.192, shown: `40${blank}ft` },
  ] as const)('$si as $as is $shown', ({ as, si, shown }) => {
    expect(us.of(as, si)).toBe(shown);
  });

  it('room is told as disks are sold', () => {
    expect([33_554_432, 999_400_000, 999_600_000, 61.24e9, 512e9].map(us.bytes)).toEqual(['34', '999', '1.0', '61.2', '512'].map((figure, nth) => `${figure}${blank}${nth < 2 ? 'MB' : 'GB'}`));
  });

  it('every scale comes back to where it began', () => {
    for (const units of ['us', 'metric'] as const)
      for (const as of ['temp', 'rise', 'mass', 'length', 'steel', 'ground', 'walk', 'speed', 'pace', 'heat'] satisfies ShownAs[])
        expect(scaleOf(units, as).si(scaleOf(units, as).shown(3.21))).toBeCloseTo(3.21, 9);
  });

  it('a metric yard in Spanish keeps the decimal point of the Americas', () => {
    expect(metric.of('mass', 1.14)).toBe(`1.1${blank}kg`);
    expect(metric.of('speed', 4)).toBe(`14${blank}km/h`);
  });

  it('wall times are those of the yard, also in the night the clocks go forward (tzdb, America/Chicago, 2027-03-14)', () => {
    expect(us.time('2027-03-14T07:59:00Z')).toBe('01:59');
    expect(us.time('2027-03-14T08:00:00Z')).toBe('03:00');
    expect(us.time('2027-03-14T06:00:00Z')).toBe('00:00');
  });

  it('spans are rounded down and never negative', () => {
    expect(us.span(8 * 3600 + 46 * 60 + 59)).toBe('8 h 46');
    expect(us.span(59)).toBe('0 min');
    expect(us.span(-5)).toBe('0 min');
  });

  it('money, by the piece and by the pound', () => {
    expect(us.money(123456)).toBe('$1,234.56');
    // 420 cents per kg x 0.45359237 kg = 190.5 cents.
    expect(us.moneyPerMass(420)).toBe('$1.91/lb');
  });
});

describe('a number as people type it', () => {
  it.each([
    ['12', 12], ['12.5', 12.5], ['12,5', 12.5], [' 250 °F ', 250], ['250°', 250], ['-4', -4], ['18 in', 18], ['22%', 22], ['.5', 0.5],
  ])('%s is %d', (text, value) => expect(typedNumber(text)).toBe(value));

  it.each(['', 'abc', '1,234.5', '12 13', '--4', '1e3x!', '1.2.3'])('%s is no number', (text) => expect(typedNumber(text)).toBeUndefined());
});
