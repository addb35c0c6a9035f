import { z } from 'zod';
import { frac, instant } from './field.js';

export const probeEnd = z.enum(['fire-end', 'stack-end']);

/** What may be wrong at a fire, by a code with its figures; the screen says the sentence and the caution. Most urgent first in a list. */
export const fireTrouble = z.discriminatedUnion('code', [
  z.object({ code: z.literal('running-away'), end: probeEnd, riseKPerMin: z.number() }),
  z.object({ code: z.literal('bed-nearly-out'), nearlyOutFrac: frac }),
  z.object({ code: z.literal('out') }),
  z.object({ code: z.literal('diverged'), at: instant }),
  z.object({ code: z.literal('nothing-known'), since: instant }),
  z.object({ code: z.literal('probe-lost'), end: probeEnd, since: instant }),
  z.object({ code: z.literal('ends-disagree'), apartK: z.number(), since: instant }),
  z.object({ code: z.literal('wood-not-recorded'), at: instant }),
  z.object({ code: z.literal('wet-lot'), burnFactor: z.number() }),
  z.object({ code: z.literal('ash'), ashKg: z.number(), burnsFrac: frac }),
  z.object({ code: z.literal('wind-burst'), onto: z.enum(['firebox', 'stack']), airFactor: z.number() }),
  z.object({ code: z.literal('not-lit') }),
]);
export type FireTroubleView = z.infer<typeof fireTrouble>;
