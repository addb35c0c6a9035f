import { z } from 'zod';
import { airTempC, commandKey, frac, headingDeg, instant } from './field.js';

/** Wind at the yard as somebody saw or measured it; `fromDeg` is where it comes from. */
const weatherSeen = {
  windMPerS: z.number().min(0).max(40),
  gustMPerS: z.number().min(0).max(60),
  fromDeg: headingDeg,
  ambientTempC: airTempC,
  rainFrac: frac,
};
export const recordWeather = z.strictObject({ key: commandKey, seenAt: instant, ...weatherSeen })
  .refine(({ windMPerS, gustMPerS }) => gustMPerS >= windMPerS, { message: 'at least as much as the wind', path: ['gustMPerS'] });
export type RecordWeather = z.infer<typeof recordWeather>;
export const weatherView = z.object({ ...weatherSeen, seenAt: instant.nullable() });
export type WeatherView = z.infer<typeof weatherView>;
