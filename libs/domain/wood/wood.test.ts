import { describe, expect, it } from 'vitest';
import { dryBasis, OutOfRangeError } from '../quantity/index.js';
import {
  bestAcrossM, densityKgPerM3, dryMassKg, equilibriumMoisture, heatOfPieceJ, liesAcross, netHeatJPerKg, pieceOfSize, SPECIES, wetMassKg,
} from './index.js';

const split = { thicknessM: 0.1, lengthM: 0.4, species: 'white-oak', moisture: dryBasis(0.3) } as const;

describe('a piece of wood', () => {
  it('weighs 0.78 t2 l times its density: white oak at fibre saturation, 0.78 x 0.01 x 0.4 x 600 = 1.872 kg dry', () => {
    expect(dryMassKg(split)).toBeCloseTo(1.872, 9);
    expect(wetMassKg(split)).toBeCloseTo(1.872 * 1.3, 9);
  });
  it('gives less heat the wetter it is, and more the denser', () => {
    expect(heatOfPieceJ({ ...split, moisture: dryBasis(0.12) })).toBeGreaterThan(heatOfPieceJ({ ...split, moisture: dryBasis(0.5) }));
    expect(heatOfPieceJ({ ...split, species: 'live-oak' })).toBeGreaterThan(heatOfPieceJ({ ...split, species: 'red-alder' }));
    expect(netHeatJPerKg(dryBasis(0.1))).toBeGreaterThan(netHeatJPerKg(dryBasis(0.2)));
  });
  it('is a third heavier when thick, a good quarter lighter when thin, and shorter as an offcut', () => {
    expect(dryMassKg(pieceOfSize(split, 'thick')) / dryMassKg(split)).toBeCloseTo(1.327, 2);
    expect(dryMassKg(pieceOfSize(split, 'thin')) / dryMassKg(split)).toBeCloseTo(0.719, 2);
    expect(pieceOfSize(split, 'offcut').lengthM).toBeCloseTo(0.16, 9);
    expect(pieceOfSize(split, 'standard')).toEqual(split);
  });
  it.each([NaN, -0.1, 0, 3])('is refused with a thickness of %d m', (thicknessM) => {
    expect(() => dryMassKg({ ...split, thicknessM })).toThrow(OutOfRangeError);
  });
  it('is refused with a moisture of 150 %', () => {
    expect(() => heatOfPieceJ({ ...split, moisture: dryBasis(1.5) })).toThrow('moisture is 1.5');
  });
  it('has a density for every species, between that of balsa and that of water and a bit', () => {
    for (const species of SPECIES) {
      const density = densityKgPerM3({ species, moisture: dryBasis(0.12) });
      expect(density).toBeGreaterThan(300);
      expect(density).toBeLessThan(1100);
    }
  });
});

it('damper air leaves wetter wood, warmer air drier wood', () => {
  expect(equilibriumMoisture({ tempC: 20, humidityFrac: 0.8 })).toBeGreaterThan(equilibriumMoisture({ tempC: 20, humidityFrac: 0.5 }));
  expect(equilibriumMoisture({ tempC: 40, humidityFrac: 0.5 })).toBeLessThan(equilibriumMoisture({ tempC: 5, humidityFrac: 0.5 }));
  expect(() => equilibriumMoisture({ tempC: 20, humidityFrac: 0.99 })).toThrow(OutOfRangeError);
});

it('a piece lies across up to 0.7 of the width, lengthwise up to 0.9 of the length', () => {
  const firebox = { fireboxDiameterM: 0.6, fireboxLengthM: 0.7 };
  expect(liesAcross({ ...firebox, lengthM: 0.42 })).toBe('across');
  expect(liesAcross({ ...firebox, lengthM: 0.43 })).toBe('lengthwise');
  expect(liesAcross({ ...firebox, lengthM: 0.64 })).toBe('too-long');
  expect(bestAcrossM(0.6)).toBeCloseTo(0.348, 9);
  expect(() => liesAcross({ ...firebox, lengthM: NaN })).toThrow(OutOfRangeError);
});
