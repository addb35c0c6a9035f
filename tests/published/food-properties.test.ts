import { expect, it } from 'vitest';
import { partAt } from '../../libs/domain/food/meat.js';
import { meatAt, waterHeldFrac } from '../../libs/domain/food/meat.js';

// Choi and Okos 1986, as in ASHRAE Refrigeration 2006 ch. 9 tables 1 and 2. The rows are those equations worked by hand at one
// temperature, to the digits given; so a slip in any coefficient shows.
it.each([
  { part: 'water', tempC: 20, k: 0.6037, rho: 995.7, cp: 4.1766 },
  { part: 'protein', tempC: 20, k: 0.2016, rho: 1319.5, cp: 2.0319 },
  { part: 'fat', tempC: 20, k: 0.1751, rho: 917.2, cp: 2.0117 },
  { part: 'ash', tempC: 20, k: 0.3565, rho: 2418.2, cp: 1.1289 },
  { part: 'water', tempC: 60, k: 0.6527, rho: 983.8, cp: 4.1905 },
  { part: 'protein', tempC: 60, k: 0.2408, rho: 1298.8, cp: 2.076 },
  { part: 'fat', tempC: 60, k: 0.1635, rho: 900.5, cp: 2.0553 },
] as const)('$part at $tempC °C: k $k W/mK, $rho kg/m3, $cp kJ/kgK (Choi and Okos)', ({ part, tempC, k, rho, cp }) => {
  const at = partAt(part, tempC);
  expect(Math.abs(at.conductivityWPerMK - k)).toBeLessThanOrEqual(0.5e-4);
  expect(Math.abs(at.densityKgPerM3 - rho)).toBeLessThanOrEqual(0.05);
  expect(Math.abs(at.heatJPerKgK / 1000 - cp)).toBeLessThanOrEqual(0.5e-4);
});

it('diffusivity of the parts agrees with their own published fits within 3.5 % from 20 to 60 °C (Choi and Okos 1986, rows from memory)', () => {
  const fits = { water: [13.168, 0.062477, -0.00024022], protein: [6.8714, 0.047578, -0.00014646], fat: [9.8777, -0.012569, -3.8286e-6], carbohydrate: [8.0842, 0.053052, -0.00023218] } as const;
  for (const [part, [a, b, c]] of Object.entries(fits))
    for (const tempC of [20, 40, 60]) {
      const { conductivityWPerMK: k, densityKgPerM3: rho, heatJPerKgK: cp } = partAt(part as keyof typeof fits, tempC);
      expect(Math.abs(k / (rho * cp) / ((a + b * tempC + c * tempC * tempC) * 1e-8) - 1), `${part} at ${tempC}`).toBeLessThan(0.035);
    }
});

const BRISKET = { waterFrac: 0.5518, proteinFrac: 0.1694, fatFrac: 0.2654, ashFrac: 0.008 };
const PORK = { waterFrac: 0.69, proteinFrac: 0.177, fatFrac: 0.124, ashFrac: 0.009 };
const CHICKEN = { waterFrac: 0.6599, proteinFrac: 0.186, fatFrac: 0.1506, ashFrac: 0.0079 };
const LAMB = { waterFrac: 0.7342, proteinFrac: 0.2029, fatFrac: 0.0525, ashFrac: 0.0106 };

// The mixing rules of ASHRAE Refrigeration ch. 9 worked by hand; compositions of its table 3 and of USDA SR.
it.each([
  { what: 'brisket, lean and fat', of: BRISKET, tempC: 20, rho: 1019.9, along: 0.4227, across: 0.3032, cp: 3209 },
  { what: 'brisket, lean and fat', of: BRISKET, tempC: 60, rho: 1005.3, along: 0.4518, across: 0.308, cp: 3236 },
  { what: 'pork blade', of: PORK, tempC: 5, rho: 1038, along: 0.4683, across: 0.3601, cp: 3495 },
  { what: 'pork blade', of: PORK, tempC: 60, rho: 1021.4, along: 0.5256, across: 0.3929, cp: 3524 },
  { what: 'chicken', of: CHICKEN, tempC: 20, rho: 1034.3, along: 0.472, across: 0.354, cp: 3431 },
  { what: 'lamb, lean', of: LAMB, tempC: 5, rho: 1052.4, along: 0.4911, across: 0.3915, cp: 3590 },
])('$what at $tempC °C: $rho kg/m3, k $along along and $across across, $cp J/kgK', ({ of, tempC, rho, along, across, cp }) => {
  const at = meatAt(of, tempC);
  expect(Math.abs(at.densityKgPerM3 - rho)).toBeLessThanOrEqual(0.06);
  expect(Math.abs(at.conductivityWPerMK - along)).toBeLessThanOrEqual(0.6e-4);
  expect(Math.abs(at.acrossWPerMK - across)).toBeLessThanOrEqual(0.6e-4);
  expect(Math.abs(at.heatJPerKgK - cp)).toBeLessThanOrEqual(0.6);
});

it('150 kg of lean lamb from 10 to 0 °C give off about 5390 kJ (ASHRAE Refrigeration ch. 9, example on specific heat; printed 3.59 kJ/kgK, total from memory)', () => {
  const { heatJPerKgK } = meatAt(LAMB, 5);
  expect(heatJPerKgK / 1000).toBeCloseTo(3.59, 2);
  expect(Math.abs((150 * heatJPerKgK * 10) / 1000 - 5385)).toBeLessThan(6);
});

it('measured heat capacities of meat lie 4 to 10 % below Choi and Okos (Morley 1972, in James and James, Meat Refrigeration, table 13.2: lean beef of 72 % water 3.43, lean chicken of 73 % 3.39 kJ/kgK)', () => {
  const leanBeef = meatAt({ waterFrac: 0.72, proteinFrac: 0.21, fatFrac: 0.06, ashFrac: 0.01 }, 50).heatJPerKgK / 1000;
  expect(leanBeef / 3.43).toBeGreaterThan(1);
  expect(leanBeef / 3.43).toBeLessThan(1.1);
});

// C_eq of Feyissa and others (2009) at the temperatures of the record, worked by hand.
it.each([[40, 0.7444], [50, 0.7382], [55, 0.7223], [60, 0.6768], [65, 0.5855], [70, 0.4862], [80, 0.4092]])(
  'beef at %d °C holds %d kg of water for each kg', (tempC, held) => expect(Math.abs(0.745 * waterHeldFrac(tempC) - held)).toBeLessThanOrEqual(0.6e-4),
);

it('water is let go fastest at 65.6 °C (52 + ln 30 / 0.25, the middle of the curve of Feyissa and others)', () => {
  const slope = (tempC: number) => waterHeldFrac(tempC + 0.05) - waterHeldFrac(tempC - 0.05);
  const middle = 52 + Math.log(30) / 0.25;
  expect(slope(middle)).toBeLessThan(slope(middle + 1));
  expect(slope(middle)).toBeLessThan(slope(middle - 1));
});

it('properties of ice are not asked of these fits', () => expect(() => partAt('water', -3)).toThrow(RangeError));
