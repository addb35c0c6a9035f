/** Accuracy classes of the standards, for new wire and elements only. */
export type SensorClass = 'type-k-iec-1' | 'type-k-iec-2' | 'type-k-astm-special' | 'type-k-astm-standard' | 'pt100-aa' | 'pt100-a' | 'pt100-b';

/** Thermocouples: the larger of K and a share of |t|, within °C. Elements: K plus a share of |t|. As the standards print them. */
const CLASSES: Readonly<Record<SensorClass, { readonly way: 'larger' | 'sum'; readonly leastK: number; readonly frac: number; readonly fromC: number; readonly toC: number }>> = {
  'type-k-iec-1': { way: 'larger', leastK: 1.5, frac: 0.004, fromC: -40, toC: 1000 },
  'type-k-iec-2': { way: 'larger', leastK: 2.5, frac: 0.0075, fromC: -40, toC: 1200 },
  'type-k-astm-special': { way: 'larger', leastK: 1.1, frac: 0.004, fromC: 0, toC: 1260 },
  'type-k-astm-standard': { way: 'larger', leastK: 2.2, frac: 0.0075, fromC: 0, toC: 1260 },
  'pt100-aa': { way: 'sum', leastK: 0.1, frac: 0.0017, fromC: -50, toC: 250 },
  'pt100-a': { way: 'sum', leastK: 0.15, frac: 0.002, fromC: -100, toC: 450 },
  'pt100-b': { way: 'sum', leastK: 0.3, frac: 0.005, fromC: -196, toC: 600 },
};

/**
 * How far a sensor of its class may be off, new. [IEC60584] [ASTM-E230] [IEC60751]
 *
 * @returns K, plus or minus; undefined outside the range in which the class holds. Held to tests/published/reading-sensors.test.ts
 */
export function toleranceK(sensor: SensorClass, tempC: number): number | undefined {
  const { way, leastK, frac, fromC, toC } = CLASSES[sensor];
  if (!(tempC >= fromC && tempC <= toC)) return undefined;
  return way === 'larger' ? Math.max(leastK, frac * Math.abs(tempC)) : leastK + frac * Math.abs(tempC);
}
