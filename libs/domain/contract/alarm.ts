import { z } from 'zod';
import { commandKey, instant, personId, pitId } from './field.js';

/** States by IEC 62682. */
export const alarmState = z.enum(['unacknowledged', 'acknowledged', 'returned-unacknowledged', 'normal']);
export const alarmKind = z.enum(['past-latest-safe', 'bed-nearly-out', 'wood-short']);
export type AlarmKind = z.infer<typeof alarmKind>;
export const alarmView = z.object({
  id: z.uuid(),
  kind: alarmKind,
  pitId: pitId.nullable(),
  state: alarmState,
  raisedAt: instant,
  returnedAt: instant.nullable(),
  acknowledgedBy: personId.nullable(),
});
export type AlarmView = z.infer<typeof alarmView>;
export const acknowledgeAlarm = z.strictObject({ key: commandKey });
export type AcknowledgeAlarm = z.infer<typeof acknowledgeAlarm>;
