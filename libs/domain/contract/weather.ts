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
/** `source`: somebody saw it, a forecast says it of now, or nothing is known and a mild calm is supposed. */
export const weatherView = z.object({ ...weatherSeen, seenAt: instant.nullable(), source: z.enum(['seen', 'forecast', 'supposed']) });
export type WeatherView = z.infer<typeof weatherView>;

/** The hours ahead as a public service has them, with their age, and since when none came. */
export const forecastView = z.object({
  /** Whether the house asks a service at all. */
  asked: z.boolean(),
  /** Whether it is known where the yard lies. */
  placed: z.boolean(),
  fetchedAt: instant.nullable(),
  trouble: z.object({ since: instant, why: z.enum(['no-answer', 'refused', 'redirected-away', 'not-a-forecast']) }).nullable(),
  hours: z.array(z.object({
    from: instant, until: instant, ambientTempC: z.number(), windMPerS: z.number(), gustMPerS: z.number(), fromDeg: headingDeg.nullable(), rainFrac: frac,
  })),
});
export type ForecastView = z.infer<typeof forecastView>;
