import { z } from 'zod';
import { alarmKind } from './alarm.js';
import { checkMark, bedGrade, pieceSize, splitLeft } from './check.js';
import { findingView, foodEntryView } from './cooking.js';
import { commandKey, instant, note } from './field.js';
import { airSet } from './fire-air.js';
import { handover } from './shift.js';
import { yardSettings } from './yard.js';

/** The logs of a night that are kept for good. */
export const RECORD_LOGS = ['fire', 'food', 'wood', 'hours', 'alarms', 'handovers'] as const;
export const recordLog = z.enum(RECORD_LOGS);
export type RecordLog = z.infer<typeof recordLog>;

/** The longest stretch that is handed out at once. */
export const MOST_RECORD_DAYS = 31;
/** From `from` on, up to but without `until`. */
export const askRecords = z.object({ from: instant, until: instant });

/** What stands by every line: names as they are now; null where nobody was signed in, or where it was not kept once. */
const line = { id: z.string(), person: z.string().nullable(), device: z.string().nullable() };
/** `at` is corrected for the device's clock, which showed `deviceAt`; it came in at `arrivedAt`. Null where it was not kept once. */
const times = { at: instant, deviceAt: instant.nullable(), arrivedAt: instant.nullable() };

const fireLine = z.object({
  ...line, ...times, pit: z.string(), bed: bedGrade, left: splitLeft, raked: z.boolean(), splits: z.number().int(), size: pieceSize, lot: z.string().nullable(), fireEndTempC: z.number().nullable(),
  stackEndTempC: z.number().nullable(), smoke: z.enum(['clean', 'dirty']).nullable(), air: airSet.nullable(), note: z.string().nullable(), wasDueAt: instant.nullable(), marks: z.array(checkMark),
});
/** `corrects`: the line that this one was written to correct; `corrected`: whether a later one corrects it. */
const foodLine = z.object({
  ...line, ...times, cookId: z.uuid(), cut: z.string(), kind: foodEntryView.shape.kind, stage: foodEntryView.shape.stage, tempC: z.number().nullable(), wrappedIn: foodEntryView.shape.wrappedIn,
  action: foodEntryView.shape.action, limit: foodEntryView.shape.limit, note: z.string().nullable(), byProbe: z.boolean(), corrects: z.string().nullable(), corrected: z.boolean(),
});
/** A cook whose food was recorded in the stretch, with each published limit that its whole record is held against. */
const heldCook = z.object({ cookId: z.uuid(), cut: z.string(), pieces: z.number().int(), onAt: instant.nullable(), offAt: instant.nullable(), findings: z.array(findingView) });
const woodLine = z.object({
  ...line, ...times, lot: z.string(), pit: z.string().nullable(), kind: z.enum(['bought', 'pulled', 'brought-back', 'burned', 'recounted', 'trimmed']),
  stackPieces: z.number().int(), cartPieces: z.number().int(), reason: z.string().nullable(),
});
const stretch = z.object({ from: instant, until: instant });
const hoursLine = z.object({ id: z.string(), person: z.string(), startsAt: instant, endsAt: instant, away: z.array(stretch), breaks: z.array(stretch), workedS: z.number(), paidS: z.number() });
const alarmLine = z.object({
  id: z.string(), kind: alarmKind, pit: z.string().nullable(), cut: z.string().nullable(), limit: z.string().nullable(), raisedAt: instant, returnedAt: instant.nullable(), acknowledgedAt: instant.nullable(),
  acknowledgedBy: z.string().nullable(), calls: z.number().int(),
});
/** Whatever a person or the house did, by its number in the chain. */
const trailLine = z.object({ nth: z.number().int(), at: instant, person: z.string().nullable(), device: z.string().nullable(), command: z.string(), key: z.uuid(), body: z.record(z.string(), z.unknown()) });
/** What somebody wrote beside a line that was wrong; the line stays as it was. */
const correctionLine = z.object({ ...line, at: instant, log: recordLog, line: z.string(), isRight: z.string(), because: z.string() });

/** Everything that was kept of a stretch of time. */
export const recordsView = z.object({
  yard: z.object({ name: z.string(), timeZone: z.string(), units: yardSettings.shape.units, practice: z.boolean() }),
  from: instant,
  until: instant,
  madeAt: instant,
  /** The end of the chain as these were read: written down elsewhere, `npm run verify -- --head` holds the record to it. */
  head: z.object({ nth: z.number().int(), link: z.string() }),
  fire: z.array(fireLine),
  food: z.array(foodLine),
  held: z.array(heldCook),
  wood: z.array(woodLine),
  hours: z.array(hoursLine),
  alarms: z.array(alarmLine),
  handovers: z.array(handover),
  corrections: z.array(correctionLine),
  trail: z.array(trailLine),
});
export type RecordsView = z.infer<typeof recordsView>;
/** Nights to choose from. */
export const recordNights = z.array(z.object({ startsAt: instant, endsAt: instant }));

/** Says what is right about a line that was written wrongly. */
export const correctRecord = z.strictObject({ key: commandKey, log: recordLog, line: z.string().min(1).max(80), isRight: note.min(1), because: note.min(1) });
export type CorrectRecord = z.infer<typeof correctRecord>;
