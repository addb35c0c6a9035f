import { equilibriumMoisture } from '@stokehold/domain/wood';
import { expect, it } from 'vitest';

// Wood Handbook, FPL-GTR-190 (2010), Table 4-2: equilibrium moisture content, % of dry mass. Tolerance 0.1 point: the table is
// printed to 0.1, and the Celsius set of coefficients (FPL-RN-0268) misses it by 0.06 at most.
const HUMIDITY = [20, 35, 50, 65, 80, 90];
const TABLE_4_2: readonly (readonly [number, readonly number[]])[] = [
  [30, [4.6, 7.1, 9.5, 12.4, 16.5, 21.0]],
  [50, [4.6, 7.1, 9.5, 12.3, 16.4, 20.9]],
  [60, [4.6, 7.0, 9.4, 12.1, 16.2, 20.7]],
  [70, [4.5, 6.9, 9.2, 12.0, 16.0, 20.5]],
  [90, [4.3, 6.7, 8.9, 11.5, 15.4, 19.8]],
  [110, [4.0, 6.3, 8.4, 11.0, 14.7, 19.1]],
  [140, [3.6, 5.7, 7.7, 10.0, 13.6, 17.7]],
];
const rows = TABLE_4_2.flatMap(([tempF, printed]) => printed.map((percent, i) => ({ tempF, humidity: HUMIDITY[i]!, percent })));

it.each(rows)('wood in air of $tempF °F and $humidity % takes on $percent % water (Wood Handbook, Table 4-2)', ({ tempF, humidity, percent }) => {
  const moisture = equilibriumMoisture({ tempC: (tempF - 32) / 1.8, humidityFrac: humidity / 100 });
  expect(Math.abs(moisture * 100 - percent)).toBeLessThanOrEqual(0.1);
});

it.each([
  // Worked by hand from the same equation and kept to 0.01 point.
  { tempC: 20, humidity: 30, percent: 6.19 },
  { tempC: 20, humidity: 50, percent: 9.27 },
  { tempC: 20, humidity: 65, percent: 12.0 },
  { tempC: 20, humidity: 80, percent: 16.04 },
])('at 20 °C and $humidity % the equation of FPL-RN-0268 gives $percent %', ({ tempC, humidity, percent }) => {
  expect(Math.abs(equilibriumMoisture({ tempC, humidityFrac: humidity / 100 }) * 100 - percent)).toBeLessThanOrEqual(0.01);
});
