import { z } from 'zod';
import { limitName } from './cooking.js';
import { cookId, deviceId, lotId, personId, pitId, serviceId, shiftId, taskId } from './field.js';
import { planCause } from './plan.js';

/** Facts, in the past tense: what goes through the outbox, in order per yard. */
export const yardEvent = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('yard-set-up') }),
  z.object({ kind: z.literal('pit-set-up'), pitId }),
  z.object({ kind: z.literal('crew-set-up'), personId }),
  z.object({ kind: z.literal('shift-planned'), shiftId }),
  z.object({ kind: z.literal('presence-reported'), personId }),
  z.object({ kind: z.literal('break-reported'), personId }),
  z.object({ kind: z.literal('task-added'), taskId }),
  z.object({ kind: z.literal('task-finished'), taskId }),
  /** `personId`: who decided; left out where nobody was signed in. */
  z.object({ kind: z.literal('work-pinned'), personId: personId.optional() }),
  z.object({ kind: z.literal('handover-signed') }),
  z.object({ kind: z.literal('check-recorded'), pitId, checkId: z.uuid() }),
  /** `runningAway`: pits whose raw readings climb as no fed fire makes them; left out where none does. `probesTurned`: a probe turned bad, or good again. */
  z.object({ kind: z.literal('readings-recorded'), pitIds: z.array(pitId), runningAway: z.array(pitId).optional(), probesTurned: z.boolean().optional() }),
  /** The broker called a gateway silent or heard it again, or it was revoked. */
  z.object({ kind: z.literal('gateway-changed'), deviceId }),
  z.object({ kind: z.literal('learned-set-back'), pitId }),
  z.object({ kind: z.literal('weather-recorded') }),
  z.object({ kind: z.literal('lot-changed'), lotId }),
  z.object({ kind: z.literal('wood-moved'), lotId, pitId: pitId.nullable() }),
  z.object({ kind: z.literal('cook-changed'), cookId }),
  z.object({ kind: z.literal('food-recorded'), cookIds: z.array(cookId) }),
  /** All cooks on hand were forecast and held against the limits; `limits`: those that call for somebody. */
  z.object({ kind: z.literal('food-judged'), limits: z.array(z.object({ cookId, limit: limitName, pitId: pitId.nullable() })) }),
  z.object({ kind: z.literal('service-changed'), serviceId }),
  z.object({ kind: z.literal('alarm-changed'), pitId: pitId.nullable() }),
  z.object({ kind: z.literal('minute-passed') }),
  /** The server's clock was set by so much while the night ran. */
  z.object({ kind: z.literal('clock-stepped'), byS: z.number().int() }),
  z.object({ kind: z.literal('fire-estimated'), pitIds: z.array(pitId), because: planCause }),
  z.object({ kind: z.literal('due-moved'), pitIds: z.array(pitId), because: planCause }),
  z.object({ kind: z.literal('plan-repaired') }),
]);
export type YardEvent = z.infer<typeof yardEvent>;
export type EventKind = YardEvent['kind'];
export type EventOf<K extends EventKind> = Extract<YardEvent, { kind: K }>;
