import { OPEN_GRASS_M, PIT_HEIGHT_M, windAtHeightFrac } from '@stokehold/domain/chamber';
import { type EpochS, fromIso } from '@stokehold/domain/quantity';
import { z } from 'zod';

/** An hour of a forecast, in the units of the house, the wind at the height of the pits. */
export interface ForecastHour {
  readonly from: EpochS;
  readonly until: EpochS;
  readonly ambientTempC: number;
  readonly windMPerS: number;
  readonly gustMPerS: number;
  /** Where it comes from; null in a calm. */
  readonly fromDeg: number | null;
  readonly rainFrac: number;
}

// Exact: the international mile and the nautical mile.
const M_PER_S: Readonly<Record<string, number>> = { mph: 0.44704, kt: 1852 / 3600, 'km/h': 1 / 3.6, km_h: 1 / 3.6, 'wmoUnit:km_h-1': 1 / 3.6, 'wmoUnit:m_s-1': 1, 'm/s': 1 };
const POINTS = ['N', 'NNE', 'NE', 'ENE', 'E', 'ESE', 'SE', 'SSE', 'S', 'SSW', 'SW', 'WSW', 'W', 'WNW', 'NW', 'NNW'];
const SPEED = /^(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? ?([A-Za-z_/]+)$/;
/** What a field is once it becomes an object, as it is announced. */
const measured = z.object({ unitCode: z.string(), value: z.number().nullable().optional(), minValue: z.number().nullable().optional(), maxValue: z.number().nullable().optional() });
const speed = z.union([z.string(), measured, z.null()]).optional();

/** The two addresses of the service, and the parts of them that are used. */
export const place = z.object({ properties: z.object({ forecastHourly: z.url() }) });
export const hourly = z.object({ properties: z.object({ periods: z.array(z.unknown()).max(1000) }) });
const period = z.object({
  startTime: z.iso.datetime({ offset: true }),
  endTime: z.iso.datetime({ offset: true }),
  temperature: z.union([z.number(), measured]),
  temperatureUnit: z.string().nullable().optional(),
  windSpeed: speed,
  windGust: speed,
  windDirection: z.union([z.string(), measured, z.null()]).optional(),
  probabilityOfPrecipitation: measured.nullable().optional(),
});

/** The hours of an answer; a period that cannot be read is left out and counted, the rest stands. */
export function hoursOf(answer: z.infer<typeof hourly>): { readonly hours: readonly ForecastHour[]; readonly unreadable: number } {
  const hours = answer.properties.periods.flatMap((given) => {
    const read = period.safeParse(given);
    const hour = read.success ? hourOf(read.data) : undefined;
    return hour ? [hour] : [];
  });
  return { hours: hours.sort((a, b) => a.from - b.from), unreadable: answer.properties.periods.length - hours.length };
}

function hourOf({ startTime, endTime, temperature, temperatureUnit, windSpeed, windGust, windDirection, probabilityOfPrecipitation }: z.infer<typeof period>): ForecastHour | undefined {
  const ambientTempC = tempCOf(temperature, temperatureUnit);
  const wind = speedOf(windSpeed);
  if (ambientTempC === undefined || wind === 'unreadable' || ambientTempC < -60 || ambientTempC > 60) return undefined;
  const gust = speedOf(windGust);
  const toPit = windAtHeightFrac(PIT_HEIGHT_M, OPEN_GRASS_M);
  const windMPerS = wind ? (wind.least + wind.most) / 2 : 0;
  const gustMPerS = Math.max(wind?.most ?? 0, gust && gust !== 'unreadable' ? gust.most : 0);
  return {
    from: fromIso(startTime), until: fromIso(endTime), ambientTempC, windMPerS: windMPerS * toPit, gustMPerS: gustMPerS * toPit, fromDeg: directionOf(windDirection),
    rainFrac: Math.min(1, Math.max(0, (probabilityOfPrecipitation?.value ?? 0) / 100)),
  };
}

function tempCOf(temperature: z.infer<typeof period>['temperature'], unit: string | null | undefined): number | undefined {
  const [value, code] = typeof temperature === 'number' ? [temperature, unit ?? ''] : [temperature.value, temperature.unitCode];
  if (value === null || value === undefined) return undefined;
  if (code === 'F' || code.endsWith(':degF')) return (value - 32) / 1.8;
  return code === 'C' || code.endsWith(':degC') ? value : undefined;
}

/** '5 mph', '5 to 10 mph', an object, or nothing: undefined where nothing is said. */
function speedOf(given: z.infer<typeof speed>): { readonly least: number; readonly most: number } | undefined | 'unreadable' {
  if (given === null || given === undefined || given === '') return undefined;
  if (typeof given !== 'string') {
    const factor = M_PER_S[given.unitCode];
    const [least, most] = [given.minValue ?? given.value, given.maxValue ?? given.value];
    if (least === null || least === undefined || most === null || most === undefined) return undefined;
    return factor === undefined ? 'unreadable' : { least: least * factor, most: most * factor };
  }
  const [, least, most, unit] = SPEED.exec(given.trim()) ?? [];
  const factor = unit === undefined ? undefined : M_PER_S[unit];
  return factor === undefined ? 'unreadable' : { least: Number(least) * factor, most: Number(most ?? least) * factor };
}

/** A point of the compass or degrees; empty in a calm. */
function directionOf(given: z.infer<typeof period>['windDirection']): number | null {
  if (given === null || given === undefined) return null;
  if (typeof given !== 'string') return given.value === null || given.value === undefined ? null : ((given.value % 360) + 360) % 360;
  const nth = POINTS.indexOf(given.trim().toUpperCase());
  return nth < 0 ? null : nth * 22.5;
}
