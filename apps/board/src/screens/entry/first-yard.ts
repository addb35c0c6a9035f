import { pin, type FirstRun, type Language, type Units } from '@stokehold/domain/contract';

export interface FirstYard {
  readonly yardName: string;
  readonly timeZone: string;
  readonly units: Units;
  readonly yardLanguage: Language;
  readonly name: string;
  readonly language: Language;
  readonly pin: string;
  readonly pinAgain: string;
  readonly deviceName: string;
}

export type Wrong = 'needed' | 'unknownZone' | 'pinWeak' | 'pinDiffers';

export function isTimeZone(name: string): boolean {
  try {
    return name.trim() !== '' && Boolean(new Intl.DateTimeFormat('en', { timeZone: name }));
  } catch {
    return false;
  }
}

/** What is wrong with the first sheet, field by field. */
export function wrongIn(yard: FirstYard): Partial<Record<keyof FirstYard, Wrong>> {
  const needed = (['yardName', 'name', 'deviceName'] as const).filter((field) => yard[field].trim() === '');
  return {
    ...Object.fromEntries(needed.map((field) => [field, 'needed'])),
    ...(!isTimeZone(yard.timeZone) && { timeZone: 'unknownZone' }),
    ...(!pin.safeParse(yard.pin).success && { pin: 'pinWeak' }),
    ...(yard.pin !== yard.pinAgain && { pinAgain: 'pinDiffers' }),
  };
}

const INCH_M = 0.0254;
/** A yard to begin with, changed under Setup: 40 m by 25 m, a 55 inch wall board read at 5 m, people walking 1.2 m/s. */
const TO_BEGIN_WITH = {
  planWidthM: 40,
  planHeightM: 25,
  planTopDeg: 0,
  woodPlace: { xM: 2, yM: 23 },
  walkSpeedMPerS: 1.2,
  screenDiagonalM: 55 * INCH_M,
  viewDistanceM: 5,
} as const;

/** What the first run asks of the server. */
export const firstRunOf = (yard: FirstYard, token: string): FirstRun => ({
  token,
  yard: { ...TO_BEGIN_WITH, name: yard.yardName.trim(), timeZone: yard.timeZone.trim(), units: yard.units, language: yard.yardLanguage },
  manager: { name: yard.name.trim(), pin: yard.pin, language: yard.language },
  deviceName: yard.deviceName.trim(),
});
