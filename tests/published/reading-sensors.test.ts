import { describe, expect, it } from 'vitest';
import { pt100Ohm, pt100TempC } from '../../libs/domain/reading/platinum.js';
import { oddRows, thermistorOf, thermistorTempC } from '../../libs/domain/reading/thermistor.js';
import { typeKEmfV, typeKTempC } from '../../libs/domain/reading/thermocouple.js';
import { toleranceK } from '../../libs/domain/reading/tolerance.js';

describe('type K, IEC 60584-1 (NIST ITS-90 reference function)', () => {
  // Reckoned from the reference function apart from this code, +- 0.0005 mV.
  it.each([[0, 0], [25, 1.0002], [65, 2.6437], [100, 4.0962], [121.11, 4.9653], [150, 6.1383], [300, 12.2086], [1000, 41.2756]])('%d °C gives %d mV', (tempC, emfMilliV) => {
    expect(Math.abs(typeKEmfV(tempC) * 1e3 - emfMilliV)).toBeLessThanOrEqual(0.0005);
  });
  // NIST type K table, instrumentation.com/RTDTables/emfk_c_1.htm and ITS-90: -200 °C -5.891 mV, -150 °C -4.913 mV; the table has three digits.
  it.each([[-200, -5.891], [-150, -4.913]])('%d °C gives %d mV', (tempC, emfMilliV) => {
    expect(Math.abs(typeKEmfV(tempC) * 1e3 - emfMilliV)).toBeLessThanOrEqual(0.0005);
  });
  // Cold junction: voltages added. Reckoned from the reference function apart from this code; voltages of four digits are worth 0.003 K.
  it.each([
    { emfMilliV: 3.5582, coldC: 35, tempC: 121.11, added: 122.02 },
    { emfMilliV: 3.4348, coldC: 24, tempC: 107.22, added: 108.05 },
    { emfMilliV: 23.2937, coldC: 40, tempC: 600.0, added: 602.13 },
    { emfMilliV: 4.0, coldC: 20, tempC: 117.03, added: undefined },
    { emfMilliV: 0.0, coldC: 28, tempC: 28.0, added: undefined },
  ])('$emfMilliV mV with a cold junction of $coldC °C is $tempC °C, not the sum of the temperatures', ({ emfMilliV, coldC, tempC, added }) => {
    expect(Math.abs(typeKTempC({ emfV: emfMilliV * 1e-3, coldJunctionTempC: coldC })! - tempC)).toBeLessThanOrEqual(0.006);
    if (added === undefined) return;
    const sum = typeKTempC({ emfV: emfMilliV * 1e-3, coldJunctionTempC: 0 })! + coldC;
    expect(Math.abs(sum - added)).toBeLessThanOrEqual(0.02);
  });
  it('the inverse polynomial of ITS-90 from 0 to 500 °C agrees within its printed error of -0.05 to 0.04 K', () => {
    const inverse = [0, 25.08355, 7.860106e-2, -2.503131e-1, 8.31527e-2, -1.228034e-2, 9.804036e-4, -4.41303e-5, 1.057734e-6, -1.052755e-8];
    for (let emfMilliV = 0; emfMilliV <= 20.644; emfMilliV += 0.25) {
      const printed = inverse.reduce((sum, d, power) => sum + d * emfMilliV ** power, 0);
      const off = printed - typeKTempC({ emfV: emfMilliV * 1e-3, coldJunctionTempC: 0 })!;
      expect(off).toBeGreaterThanOrEqual(-0.055);
      expect(off).toBeLessThanOrEqual(0.055);
    }
  });
  it('the slope near 120 °C is 40.97 µV/K', () => {
    expect(Math.abs((typeKEmfV(120.5) - typeKEmfV(119.5)) * 1e6 - 40.97)).toBeLessThanOrEqual(0.05);
  });
  it('every temperature of the range comes back from its voltage', () => {
    for (let tempC = -268; tempC <= 1370; tempC += 7) expect(Math.abs(typeKTempC({ emfV: typeKEmfV(tempC), coldJunctionTempC: 0 })! - tempC)).toBeLessThanOrEqual(0.01);
  });
  it('a voltage that no temperature gives has none', () => {
    for (const emfV of [0.06, -0.0066, Number.NaN]) expect(typeKTempC({ emfV, coldJunctionTempC: 0 })).toBeUndefined();
  });
});

describe('Pt100, IEC 60751', () => {
  // From the equation of the standard, reckoned apart from this code, +- 0.001 ohm.
  it.each([[0, 100], [60, 123.242], [100, 138.505], [121.11, 146.486], [150, 157.325], [200, 175.856]])('%d °C is %d ohm', (tempC, ohm) => {
    expect(Math.abs(pt100Ohm(tempC) - ohm)).toBeLessThanOrEqual(0.0011);
  });
  it('146.07 ohm is 120.005 °C', () => expect(Math.abs(pt100TempC(146.07)! - 120.005)).toBeLessThanOrEqual(0.001));
  it('every temperature of the range comes back from its resistance', () => {
    for (let tempC = -200; tempC <= 850; tempC += 5) expect(Math.abs(pt100TempC(pt100Ohm(tempC))! - tempC)).toBeLessThanOrEqual(1e-6);
  });
});

describe('NTC thermistor, Steinhart and Hart', () => {
  const usual10k = { a: 0.001129148, b: 0.000234125, c: 8.76741e-8 };
  // studylibfr.com/doc/3640921, a usual 10 kOhm part; temperatures reckoned from its coefficients, +- 0.002 K.
  it.each([[32650, 0], [10000, 25], [5326, 39.995], [2488, 59.99], [680, 99.921]])('%d ohm of a usual 10 kOhm part is %d °C', (ohm, tempC) => {
    expect(Math.abs(thermistorTempC(usual10k, ohm) - tempC)).toBeLessThanOrEqual(0.002);
  });
  // Table of a manual (ILX LDT-5525, manualsdump.com/en/manuals/lightwave_communications-ldt-5525/138826/41).
  const table = [[0, 32128], [10, 19549], [20, 12262], [25, 9814], [30, 7908], [40, 5331], [50, 3542]].map(([tempC, resistanceOhm]) => ({ tempC: tempC!, resistanceOhm: resistanceOhm! }));
  const row = (tempC: number) => table.find((one) => one.tempC === tempC)!;
  it('three rows of a table give its coefficients, and the rows between them', () => {
    const fit = thermistorOf([row(25), row(0), row(50)]);
    if (!fit.ok) throw new Error(fit.refusal);
    expect(Math.abs(fit.value.a / 1.104159125e-3 - 1)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(fit.value.b / 2.389179467e-4 - 1)).toBeLessThanOrEqual(1e-6);
    expect(Math.abs(fit.value.c / 6.931626526e-8 - 1)).toBeLessThanOrEqual(1e-5);
    expect(Math.abs(thermistorTempC(fit.value, 19549) - 10.0001)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(thermistorTempC(fit.value, 12262) - 19.9994)).toBeLessThanOrEqual(0.001);
  });
  it('the row of 40 °C, very likely a misprint, is found among its neighbours', () => {
    expect(oddRows(table).map(({ tempC }) => tempC)).toEqual([40]);
    expect(oddRows(table.filter(({ tempC }) => tempC !== 40))).toEqual([]);
  });
  it('rows that do not fall are refused', () => expect(thermistorOf([row(0), row(25), { tempC: 50, resistanceOhm: 20_000 }])).toEqual({ ok: false, refusal: 'not-a-thermistor' }));
});

describe('accuracy classes', () => {
  // IEC 60584-2 and ASTM E230-12, IEC 60751; at 121 °C (250 °F) worked by hand: 2.5, 1.5, 2.2, 1.1; 0.1 + 0.0017 x 121 = 0.306 and so on.
  it.each([
    ['type-k-iec-1', 121, 1.5], ['type-k-iec-2', 121, 2.5], ['type-k-astm-standard', 121, 2.2], ['type-k-astm-special', 121, 1.1],
    ['pt100-aa', 121, 0.306], ['pt100-a', 121, 0.392], ['pt100-b', 121, 0.905],
    // The share takes over from 375 °C and from 333 °C, as the tables print.
    ['type-k-iec-1', 500, 2.0], ['type-k-iec-2', 400, 3.0], ['type-k-iec-1', 375, 1.5],
  ] as const)('%s at %d °C may be off by %d K', (sensor, tempC, k) => expect(toleranceK(sensor, tempC)).toBeCloseTo(k, 3));
  it('outside its range a class says nothing', () => expect(toleranceK('type-k-iec-1', 1100)).toBeUndefined());
});
