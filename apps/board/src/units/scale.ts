import type { Units } from '@stokehold/domain/contract';

/** How a quantity is shown: its unit, the digits after the point, and the way from SI and back. */
export interface Scale {
  readonly unit: string;
  readonly digits: number;
  readonly shown: (si: number) => number;
  readonly si: (shown: number) => number;
}

const times = (unit: string, factor: number, digits: number): Scale => ({
  unit,
  digits,
  shown: (si) => si * factor,
  si: (shown) => shown / factor,
});

// Exact by definition: NIST SP 811 (2008), appendix B.8: 1 lb = 0.45359237 kg, 1 in = 0.0254 m, 1 ft = 0.3048 m,
// 1 yd = 0.9144 m, 1 mi = 1609.344 m.
const POUNDS_PER_KG = 1 / 0.45359237;
const INCHES_PER_M = 1 / 0.0254;
const FEET_PER_M = 1 / 0.3048;
const YARDS_PER_M = 1 / 0.9144;
const MPH_PER_M_S = 3600 / 1609.344;

const US = {
  temp: { unit: '°F', digits: 0, shown: (c: number) => c * 1.8 + 32, si: (f: number) => (f - 32) / 1.8 },
  /** Food is held against limits that are compared unrounded. */
  food: { unit: '°F', digits: 1, shown: (c: number) => c * 1.8 + 32, si: (f: number) => (f - 32) / 1.8 },
  rise: times('°F', 1.8, 0),
  mass: times('lb', POUNDS_PER_KG, 1),
  length: times('in', INCHES_PER_M, 1),
  steel: times('in', INCHES_PER_M, 3),
  ground: times('ft', FEET_PER_M, 0),
  walk: times('yd', YARDS_PER_M, 0),
  speed: times('mph', MPH_PER_M_S, 0),
  pace: times('mph', MPH_PER_M_S, 1),
  heat: times('kBtu', 1 / 1.05505585262e6, 0),
  flux: times('Btu/h·ft²', 3600 / 1055.05585262 / FEET_PER_M ** 2, 0),
} as const satisfies Record<string, Scale>;

export type ShownAs = keyof typeof US;

const METRIC: Readonly<Record<ShownAs, Scale>> = {
  temp: times('°C', 1, 0),
  food: times('°C', 1, 1),
  rise: times('°C', 1, 0),
  mass: times('kg', 1, 1),
  length: times('cm', 100, 0),
  steel: times('mm', 1000, 0),
  ground: times('m', 1, 1),
  walk: times('m', 1, 0),
  speed: times('km/h', 3.6, 0),
  pace: times('km/h', 3.6, 1),
  heat: times('MJ', 1e-6, 0),
  flux: times('W/m²', 1, 0),
};

/** The yard's scale for a quantity. */
export const scaleOf = (units: Units, as: ShownAs): Scale => (units === 'us' ? US[as] : METRIC[as]);
