import { z } from 'zod';
import { ALARM_KINDS, ALARM_PRIORITIES, TIERS } from '../alarm/index.js';
import { limitName } from './cooking.js';
import { commandKey, cookId, deviceId, frac, instant, personId, pitId, probeId } from './field.js';

/** States by IEC 62682. */
export const alarmState = z.enum(['unacknowledged', 'acknowledged', 'returned-unacknowledged', 'normal']);
export const alarmKind = z.enum(ALARM_KINDS);
export type AlarmKind = z.infer<typeof alarmKind>;
export const alarmPriority = z.enum(ALARM_PRIORITIES);
/** Who is called: the person who has the pit, the leads with them, everyone who is there. */
export const alarmTier = z.enum(TIERS);
const shelfWay = z.enum(['timed', 'one-shot']);

export const alarmView = z.object({
  id: z.uuid(),
  kind: alarmKind,
  priority: alarmPriority,
  pitId: pitId.nullable(),
  /** For a limit of food: whose, and which. */
  cookId: cookId.optional(),
  limit: limitName.optional(),
  /** For a probe or a gateway that failed: which. */
  probeId: probeId.optional(),
  deviceId: deviceId.optional(),
  /** As if it were neither shelved nor suppressed. */
  state: alarmState,
  raisedAt: instant,
  returnedAt: instant.nullable(),
  acknowledgedBy: personId.nullable(),
  shelf: z.object({ until: instant, by: personId, way: shelfWay }).nullable(),
  /** Quiet by design: its fire was just looked at, is about to be, or brings its chamber back by itself. */
  suppressedBy: z.enum(['after-check', 'check-due', 'comes-back']).nullable(),
  /** Its first cause, another alarm that stands. */
  underId: z.uuid().nullable(),
  /** Who was called by it last, and who is next if nobody takes note; null when it does not call. */
  told: z.object({ tier: alarmTier, people: z.array(personId), next: z.object({ tier: alarmTier, at: instant }).nullable() }).nullable(),
  /** The longest that it may be shelved; null where nobody may. */
  longestShelfS: z.number().nullable(),
});
export type AlarmView = z.infer<typeof alarmView>;

export const acknowledgeAlarm = z.strictObject({ key: commandKey });
export type AcknowledgeAlarm = z.infer<typeof acknowledgeAlarm>;
/** one-shot: until the condition ends, at the latest after `forS`. */
export const shelveAlarm = z.strictObject({ key: commandKey, forS: z.number().int().min(60).max(24 * 3600), way: shelfWay.default('timed') });

/** What the alarms of a night came to, beside the figures that it is held against. */
export const alarmReport = z.object({
  from: instant,
  until: instant,
  calls: z.number().int(),
  people: z.array(z.object({ personId, calls: z.number().int(), meanPerTenMinutes: z.number(), mostInTenMinutes: z.number().int() })),
  badActors: z.array(z.object({ kind: alarmKind, pitId: pitId.nullable(), calls: z.number().int(), frac })),
  priorityFrac: z.record(alarmPriority, frac),
  floodFrac: frac,
  chattering: z.number().int(),
  fleeting: z.number().int(),
  standing: z.number().int(),
  targets: z.object({
    meanPerTenMinutes: z.number(), mostPerTenMinutes: z.number(), floodFrac: frac, quietNight: z.number(), badActorFrac: frac,
    priorityFrac: z.record(alarmPriority, frac), chattering: z.number(), fleeting: z.number(), standing: z.number(),
  }),
});
export type AlarmReport = z.infer<typeof alarmReport>;
