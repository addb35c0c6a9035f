import { z } from 'zod';
import { cookId, lotId, personId, pitId, serviceId, shiftId, taskId } from './field.js';
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
  z.object({ kind: z.literal('handover-signed') }),
  z.object({ kind: z.literal('check-recorded'), pitId, checkId: z.uuid() }),
  z.object({ kind: z.literal('readings-recorded'), pitIds: z.array(pitId) }),
  z.object({ kind: z.literal('weather-recorded') }),
  z.object({ kind: z.literal('lot-changed'), lotId }),
  z.object({ kind: z.literal('wood-moved'), lotId, pitId: pitId.nullable() }),
  z.object({ kind: z.literal('cook-changed'), cookId }),
  z.object({ kind: z.literal('service-changed'), serviceId }),
  z.object({ kind: z.literal('alarm-changed'), pitId: pitId.nullable() }),
  z.object({ kind: z.literal('minute-passed') }),
  z.object({ kind: z.literal('fire-estimated'), pitIds: z.array(pitId), because: planCause }),
  z.object({ kind: z.literal('due-moved'), pitIds: z.array(pitId), because: planCause }),
  z.object({ kind: z.literal('plan-repaired') }),
]);
export type YardEvent = z.infer<typeof yardEvent>;
export type EventKind = YardEvent['kind'];
export type EventOf<K extends EventKind> = Extract<YardEvent, { kind: K }>;
