import { type DryBasis, dryBasis, requireRange } from '../quantity/index.js';

/**
 * Moisture that wood takes on when it lies long enough in this air: equilibrium moisture content.
 *
 *     EMC = 1800/W [ K h/(1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2)/(1 + K1 K h + K1 K2 K^2 h^2) ]     [FPL-RN-0268], T in °C
 *
 * Not specific to a species; wetting and drying differ by 1 to 3 points.
 *
 * @param air.tempC         T, -5 to 99 °C
 * @param air.humidityFrac  h, relative humidity, 0.02 to 0.95: above that the equation says nothing
 * @returns dry basis, a fraction. Held to tests/published/wood-moisture.test.ts
 */
export function equilibriumMoisture(air: { readonly tempC: number; readonly humidityFrac: number }): DryBasis {
  requireRange('air temperature (°C)', air.tempC, -5, 99);
  requireRange('relative humidity', air.humidityFrac, 0.02, 0.95);
  const t = air.tempC;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * air.humidityFrac;
  const bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return dryBasis((1800 / w) * (kh / (1 - kh) + bound) / 100);
}
