import { describe, expect, it } from 'vitest';
import { figuresOf } from '../units/figures.js';
import { FormReading } from './form-reading.js';

const reading = (units: 'us' | 'metric' = 'us') => new FormReading(figuresOf({ units, timeZone: 'America/Chicago', language: 'en' }), 'America/Chicago');

describe('what is typed into a form', () => {
  it('is read in the yard’s units, with comma or point', () => {
    // NIST SP 811 (2008), appendix B.8: 1 lb = 0.45359237 kg.
    expect(reading().number('weight', '12,5', { as: 'mass', min: 0.05, max: 2000 })).toBeCloseTo(5.669904625, 9);
    expect(reading('metric').number('weight', '12.5', { as: 'mass', min: 0.05, max: 2000 })).toBe(12.5);
    expect(reading().number('low', '250', { as: 'temp', min: 60, max: 250 })).toBeCloseTo(121.111, 3); // by hand: 218 / 1.8
  });
  it('says what is wrong, at its field, all at once', () => {
    const read = reading();
    read.number('pieces', '2.5', { min: 1, max: 400, whole: true });
    read.number('weight', 'heavy', { as: 'mass', min: 0.05, max: 2000 });
    read.number('low', '900', { as: 'temp', min: 60, max: 250 });
    read.text('name', '  ');
    expect(read.wrongs).toEqual({
      pieces: { code: 'whole-number' },
      weight: { code: 'not-a-number' },
      low: { code: 'between', low: expect.stringMatching(/^140\s°F$/), high: expect.stringMatching(/^482\s°F$/) },
      name: { code: 'needed' },
    });
    expect(read.good).toBe(false);
  });
  it('takes the limit as it is shown, though rounding put it a hair outside', () => {
    const read = reading();
    expect(read.number('length', '59.1', { as: 'length', min: 0.05, max: 1.5 })).toBe(1.5); // 59.1 in is 1.501 m
    expect(read.good).toBe(true);
  });
  it('leaves what nobody changed as it was, to the last digit', () => {
    const wanted = { as: 'length', min: 0.05, max: 5, was: 0.78 } as const; // shown as 30.7 in
    expect(reading().number('zone', '30.7', wanted)).toBe(0.78);
    expect(reading().number('zone', '30.8', wanted)).toBeCloseTo(0.78232, 9);
  });
  it('money becomes whole cents', () => {
    expect(reading().cents('price', '$412,50', 1_000_000)).toBe(41250);
  });
  it('a wall time becomes an instant, the second of two if so chosen, and none in the gap', () => {
    // Source: time zone database, America/Chicago.
    const read = reading();
    expect(read.instant('ready', { wall: '2027-11-07T01:30', again: true })).toBe('2027-11-07T07:30:00Z');
    expect(read.instant('off', { wall: '2027-03-14T02:30', again: false })).toBeUndefined();
    expect(read.wrongs).toEqual({ off: { code: 'time-skipped', from: '02:00', to: '03:00' } });
  });
});
