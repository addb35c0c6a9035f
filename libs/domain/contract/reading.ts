import { z } from 'zod';
import { commandKey, deviceId, instant, note, personId, pitId, probeId, sentAt, shortText } from './field.js';

/** The widest that any sensor of a pit can show; what is out of its own range is judged, not refused. */
const shownC = z.number().min(-270).max(1400);
const ohm = z.number().min(0).max(1e9);
const coefficient = z.number().min(-1).max(1);
/** Resistance at three temperatures gives the coefficients of a thermistor; a maker's sheet prints them: 1/T = a + b ln R + c (ln R)^3. */
const thermistor = z.strictObject({ a: coefficient, b: coefficient, c: coefficient });

/** What an input read: a temperature already, or what its sensor gave, or that its converter flags a fault. */
export const readingValue = {
  tempC: shownC.optional(),
  tempF: z.number().min(-454).max(2552).optional(),
  typeK: z.strictObject({ emfV: z.number().min(-1).max(1), coldJunctionTempC: z.number().min(-40).max(125) }).optional(),
  pt100: z.strictObject({ resistanceOhm: ohm }).optional(),
  ntc: z.strictObject({ resistanceOhm: ohm, of: thermistor }).optional(),
  fault: z.enum(['open', 'short']).optional(),
};
const ONE_OF = Object.keys(readingValue) as (keyof typeof readingValue)[];

/** One reading of one probe, named by its id in the yard or by the gateway's own name for it. */
export const sentReading = z.strictObject({ probeId: probeId.optional(), source: shortText.optional(), takenAt: instant, ...readingValue })
  .refine((reading) => ONE_OF.filter((name) => reading[name] !== undefined).length === 1, { message: `exactly one of ${ONE_OF.join(', ')}` })
  .refine(({ probeId: id, source }) => (id === undefined) !== (source === undefined), { message: 'either probeId or source' });
export type SentReading = z.infer<typeof sentReading>;

export const MOST_READINGS = 1000;
export const recordReadings = z.strictObject({ key: commandKey, sentAt, readings: z.array(sentReading).min(1).max(MOST_READINGS) });
export type RecordReadings = z.infer<typeof recordReadings>;
/** `aside`: kept, but of no probe of this yard, or of a time that cannot be. */
export const readingsRecorded = z.object({ kept: z.number().int(), repeated: z.number().int(), aside: z.number().int() });
export type ReadingsRecorded = z.infer<typeof readingsRecorded>;

/**
 * Readings as a file or pasted text: a line of names, then a line a reading, separated by commas, semicolons or tabs. Names: probe,
 * time, and temp_c or temp_f.
 */
export const pasteReadings = z.strictObject({ key: commandKey, text: z.string().min(1).max(200_000) });
export const readingsPasted = readingsRecorded.extend({
  /** Lines that are no reading, with what each wants. */
  wrong: z.array(z.object({ line: z.number().int(), wants: z.string() })),
});
export type ReadingsPasted = z.infer<typeof readingsPasted>;

export const readingQuality = z.enum(['good', 'suspect', 'bad']);
export const probeReason = z.enum([
  'open', 'short', 'out-of-range', 'above-usual', 'stuck', 'spike', 'rate', 'noisy', 'reversed', 'swapped-ends', 'in-air', 'stale', 'missing',
]);
const comparison = z.strictObject({ shownC: z.number().min(-60).max(400), trueC: z.number().min(-60).max(400) });
export const calibrateProbe = z.strictObject({ key: commandKey, against: z.array(comparison).max(2), note: note.optional() });

/** A probe as it stands: what it showed last, and whether to believe it. */
export const probeView = z.object({
  id: probeId,
  pitId,
  name: z.string(),
  zone: z.number().int(),
  tempC: z.number().nullable(),
  lastAt: instant.nullable(),
  quality: readingQuality.nullable(),
  reason: probeReason.nullable(),
  calibration: z.object({ from: instant, by: personId.nullable(), against: z.array(comparison), note: z.string().nullable() }).nullable(),
});
export type ProbeView = z.infer<typeof probeView>;
/** Readings that are kept and not used, by the gateway's name for their probe: of none that is known, waiting to be given to one, or of a time that cannot be. */
export const asideView = z.object({ source: z.string(), why: z.enum(['probe-unknown', 'time-impossible']), deviceId: deviceId.nullable(), readings: z.number().int(), firstAt: instant, lastAt: instant, lastTempC: z.number().nullable() });
export const probesView = z.object({ probes: z.array(probeView), aside: z.array(asideView) });
export type ProbesView = z.infer<typeof probesView>;
/** Means of a day, `stretchS` each, by the end of each; what was read in the last quarter of an hour may not be among them yet. */
export const probeCourses = z.object({
  stretchS: z.number(),
  courses: z.array(z.object({ probeId, until: z.array(instant), meanC: z.array(z.number()), leastC: z.array(z.number()), mostC: z.array(z.number()) })),
});
export type ProbeCourses = z.infer<typeof probeCourses>;
export const assignSource = z.strictObject({ key: commandKey, source: shortText, probeId });
