import { expect, it } from 'vitest';
import { boilingC, dewPointC, humidityRatio, latentHeatJPerKg, moistAirJPerKg, satPressurePa, standardPressurePa, vapourPressurePa, vapourTransfer, wetBulbC } from '../../libs/domain/food/humid-air.js';
import { STEFAN_BOLTZMANN } from '../../libs/domain/food/step.js';

// ASHRAE Fundamentals ch. 1, tables 2 and 3, with the tolerances that a general-purpose psychrometric library holds itself to.
it('vapour pressure: 3169.7 Pa at 25 °C and 101 418 Pa at 100 °C, within 0.03 % (ASHRAE Fundamentals ch. 1 table 3)', () => {
  expect(Math.abs(satPressurePa(25) / 3169.7 - 1)).toBeLessThan(0.0003);
  expect(Math.abs(satPressurePa(100) / 101_418 - 1)).toBeLessThan(0.0003);
});
it('saturated air at 25 °C holds 0.020173 kg/kg, within 0.5 % (table 2)', () => expect(Math.abs(humidityRatio(satPressurePa(25)) / 0.020173 - 1)).toBeLessThan(0.005));

it('40 °C dry and 20 °C wet at sea level: W 0.0065, dew point 7 °C, 14 % RH, 56.7 kJ/kg (ASHRAE Fundamentals ch. 1, example 1)', () => {
  expect(wetBulbC(40, 0.0065)).toBeCloseTo(20, 0);
  expect(Math.abs(dewPointC(0.0065) - 7)).toBeLessThan(1); // read from the chart, to the degree
  expect((100 * vapourPressurePa(0.0065)) / satPressurePa(40)).toBeCloseTo(14, 0);
  expect(moistAirJPerKg(40, 0.0065) / 1000).toBeCloseTo(56.7, 0);
});
it('30 °C dry and 25 °C wet at 95 461 Pa: W 0.019228 (the same library, against ASHRAE)', () => expect(Math.abs(wetBulbC(30, 0.019228, 95_461) - 25)).toBeLessThan(0.02));
it.each([[1000, 89_875], [500, 95_461]])('the standard atmosphere at %d m is %d Pa (ASHRAE Fundamentals ch. 1 table 1)', (heightM, pa) => expect(Math.abs(standardPressurePa(heightM) - pa)).toBeLessThan(2));

// The wet-bulb equation of ASHRAE Fundamentals ch. 1 solved in double precision by a search that stays below boiling.
it.each([
  { dryC: 60, ratio: 0.02, wetC: 32.61, dewC: 24.93 }, { dryC: 93.33, ratio: 0.02, wetC: 38.13, dewC: 24.93 }, { dryC: 107.22, ratio: 0.01, wetC: 36.52, dewC: 14.05 },
  { dryC: 120, ratio: 0.01, wetC: 38.43, dewC: 14.05 }, { dryC: 120, ratio: 0.03, wetC: 44.55, dewC: 31.64 }, { dryC: 120, ratio: 0.05, wetC: 49.22, dewC: 40.39 },
  { dryC: 121.11, ratio: 0.015, wetC: 40.29, dewC: 20.32 }, { dryC: 121.11, ratio: 0.1, wetC: 57.5, dewC: 52.6 }, { dryC: 121.11, ratio: 0.2, wetC: 67.12, dewC: 64.66 },
  { dryC: 135, ratio: 0.02, wetC: 43.51, dewC: 24.93 }, { dryC: 148.89, ratio: 0.1, wetC: 59.16, dewC: 52.6 },
])('$dryC °C with $ratio kg/kg: wet bulb $wetC °C, dew point $dewC °C', ({ dryC, ratio, wetC, dewC }) => {
  expect(Math.abs(wetBulbC(dryC, ratio) - wetC)).toBeLessThanOrEqual(0.011);
  expect(Math.abs(dewPointC(ratio) - dewC)).toBeLessThanOrEqual(0.011);
});
it('the wet bulb of air hotter than boiling water is found at its cold end, not at the dry bulb', () => expect(wetBulbC(148.89, 0.1)).toBeLessThan(boilingC()));
it('water boils at 100 °C at sea level, within 0.05 K (by definition of the old scale), and lower on a hill', () => {
  expect(Math.abs(boilingC() - 100)).toBeLessThan(0.05);
  expect(boilingC(standardPressurePa(1500))).toBeLessThan(96);
});
it.each([[40, 2406], [60, 2358], [80, 2308], [100, 2256]])('evaporation at %d °C takes %d kJ/kg within 0.15 % (steam tables, from memory)', (tempC, kJ) => expect(Math.abs(latentHeatJPerKg(tempC) / 1000 / kJ - 1)).toBeLessThan(0.0015));
it('10 W/m2K with a film at 80 °C carries 6.67e-8 kg/(s m2 Pa) of vapour (Chilton and Colburn, Le 0.87, air of 1.00 kg/m3 and 1010 J/kgK: by hand)', () => expect(Math.abs(vapourTransfer(10) / 6.67e-8 - 1)).toBeLessThan(0.003));

/** A wet surface in steady air: where the heat it takes equals what evaporation costs. */
function steadyC(wetFrac: number, ratio: number, emissivity: number, draught: number): number {
  const airC = 121.11;
  let [low, high] = [5, 99];
  for (let i = 0; i < 60; i++) {
    const tempC = (low + high) / 2;
    const in_ = draught * (airC - tempC) + emissivity * STEFAN_BOLTZMANN * ((airC + 273.15) ** 4 - (tempC + 273.15) ** 4);
    const out = wetFrac * vapourTransfer(draught) * (satPressurePa(tempC) - vapourPressurePa(ratio)) * latentHeatJPerKg(tempC);
    if (in_ > out) low = tempC;
    else high = tempC;
  }
  return low;
}
// Flux balance of a wet surface at 121.11 °C in steady state, h_c 8 W/m2K, emissivity 0.9: the same laws solved in double precision.
it.each([
  { ratio: 0.01, wet: 48.66, third: 67.3, sixth: 76.46 }, { ratio: 0.03, wet: 52.79, third: 69.13, sixth: 77.68 }, { ratio: 0.05, wet: 56.17, third: 70.77, sixth: 78.8 }, { ratio: 0.1, wet: 62.56, third: 74.2, sixth: 81.21 },
])('with W $ratio a wet surface stands at $wet °C, one wet on 0.30 of it at $third °C, on 0.17 at $sixth °C', ({ ratio, wet, third, sixth }) => {
  expect(Math.abs(steadyC(1, ratio, 0.9, 8) - wet)).toBeLessThan(0.2);
  expect(Math.abs(steadyC(0.3, ratio, 0.9, 8) - third)).toBeLessThan(0.2);
  expect(Math.abs(steadyC(0.17, ratio, 0.9, 8) - sixth)).toBeLessThan(0.2);
});
it('without radiation a wet surface stands beside the wet bulb of its air (Lewis relation, within 1.5 K)', () => {
  for (const [ratio, wetC] of [[0.01, 38.34], [0.03, 44.7], [0.05, 49.5], [0.1, 57.86]] as const) expect(Math.abs(steadyC(1, ratio, 0, 8) - wetC)).toBeLessThan(0.2);
  expect(Math.abs(steadyC(1, 0.03, 0, 8) - wetBulbC(121.11, 0.03))).toBeLessThan(1.5);
});
