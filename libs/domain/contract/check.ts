import { z } from 'zod';
import { commandKey, frac, grateTempC, instant, lotId, note, personId, pitId, sentAt } from './field.js';
import { airSet } from './fire-air.js';
import { fireTrouble } from './fire-trouble.js';

export const bedGrade = z.enum(['low', 'fair', 'full']);
export const splitLeft = z.enum(['coals', 'some', 'most']);
export const pieceSize = z.enum(['thin', 'standard', 'thick', 'offcut']);
export const adviceAction = z.enum(['rake', 'one', 'two', 'one-thin', 'one-thick', 'two-thin', 'offcut', 'two-offcuts']);
export type AdviceAction = z.infer<typeof adviceAction>;

/** One look at one fire: what was seen, what was done. */
export const recordCheck = z.strictObject({
  key: commandKey,
  sentAt,
  pitId,
  /** When the fire was looked at, by the device's clock. */
  seenAt: instant,
  bed: bedGrade,
  left: splitLeft,
  /** Whether the coals were raked. Who lays a split rakes them even first: with wood laid it counts as true. */
  raked: z.boolean(),
  splits: z.number().int().min(0).max(6),
  size: pieceSize.default('standard'),
  /** From which lot; without it, from the lot that lies on top of the pit's cart. */
  lotId: lotId.optional(),
  fireEndTempC: grateTempC.optional(),
  stackEndTempC: grateTempC.optional(),
  smoke: z.enum(['clean', 'dirty']).optional(),
  /** How the air was left behind; without it, as it was. */
  air: airSet.optional(),
  note: note.optional(),
});
export type RecordCheck = z.infer<typeof recordCheck>;

/**
 * Why a check that was kept is not like the others. second-look: another look was recorded for a later time, so this one
 * corrects no estimate. clock-off: the device's clock was more than 5 minutes off. not-on-cart: more wood went on than
 * the cart held. unlit: the pit was not burning in the plan.
 */
export const checkMark = z.enum(['second-look', 'clock-off', 'not-on-cart']);
export type CheckMark = z.infer<typeof checkMark>;

export const checkView = z.object({
  id: z.uuid(),
  pitId,
  personId: personId.nullable(),
  seenAt: instant,
  bed: bedGrade,
  left: splitLeft,
  raked: z.boolean(),
  splits: z.number().int(),
  size: pieceSize,
  lotId: lotId.nullable(),
  fireEndTempC: z.number().nullable(),
  stackEndTempC: z.number().nullable(),
  smoke: z.enum(['clean', 'dirty']).nullable(),
  air: airSet.nullable(),
  note: z.string().nullable(),
  /** Due time that this check answered; how late it was follows. */
  wasDueAt: instant.nullable(),
  marks: z.array(checkMark),
});
export type CheckView = z.infer<typeof checkView>;
/** `corrected`: the time the server holds for the check when the device's clock was off. */
export const checkRecorded = z.object({ check: checkView, clockOffsetS: z.number() });
export type CheckRecorded = z.infer<typeof checkRecorded>;

const spread = z.object({ p10: z.number(), p50: z.number(), p90: z.number() });
/** What is believed of a fire now: an estimate, corrected by what was seen. */
export const fireView = z.object({
  at: instant,
  mode: z.enum(['start-up', 'burning', 'bed-nearly-out', 'out']),
  bed: bedGrade,
  bedKg: z.number(),
  fullBedKg: z.number(),
  splitsBurning: z.number(),
  splitLeftFrac: frac,
  zoneTempC: z.array(z.number()),
  chamberTempC: spread,
  bedLostRiskFrac: frac,
  /** Dry wood burned a second, as believed of this fire lately. */
  dryKgPerS: z.number(),
  /** How the air was left at the last look that said so. */
  air: airSet,
  /** What may be wrong here, most urgent first. */
  troubles: z.array(fireTrouble),
  /** Every `stepS` from `from`: the chamber's mean temperature if nobody touches the fire. */
  forecast: z.object({ from: instant, stepS: z.number(), p10: z.array(z.number()), p50: z.array(z.number()), p90: z.array(z.number()) }),
});
export type FireView = z.infer<typeof fireView>;

export const dueView = z.object({
  earliestAt: instant,
  dueAt: instant,
  latestSafeAt: instant,
  why: z.enum(['band', 'bed', 'last-look', 'start-up', 'hot']),
});
export type DueView = z.infer<typeof dueView>;

export const adviceReason = z.enum([
  'bed-nearly-out', 'bed-low', 'below-band', 'above-band', 'split-has-life', 'split-nearly-gone', 'holds-band', 'not-yet-lit', 'nothing-known',
]);
/** How to leave the air until the next look, and what of it differs from how it stands; a screen goes up before anything else. */
const airAdvice = z.object({
  set: airSet,
  changes: z.array(z.enum(['door', 'damper', 'screen'])).min(1),
  reason: z.enum(['air-warmer', 'air-cooler', 'air-wind', 'air-usual']),
});
export type AirAdviceView = z.infer<typeof airAdvice>;
/** What one choice is expected to bring if it is made now and the best follows. */
const adviceChoice = z.object({
  action: adviceAction,
  air: airAdvice.nullable(),
  lookAgainAt: instant,
  /** If nothing more were done after it; null when the band is held as far as one can see. */
  leavesBandAt: instant.nullable(),
  outOfBandKMin: z.number(),
  inBandMin: z.number().nullable(),
  woodKg: z.number().nullable(),
  bedLostRiskFrac: frac,
});
export type AdviceChoiceView = z.infer<typeof adviceChoice>;
export const adviceView = z.object({
  madeAt: instant,
  action: adviceAction,
  /** Null: the air stays as it is. */
  air: airAdvice.nullable(),
  lookAgainAt: instant,
  freshOnDoorSide: z.boolean(),
  reason: z.object({ code: adviceReason, bedKg: z.number(), fullBedKg: z.number(), tempC: z.number(), splitLeftFrac: frac }),
  /** When the band would be left with this action, and with the second best: 'one would leave the band at 02:38'. */
  leavesBandAt: instant.nullable(),
  otherwise: z.object({ action: adviceAction, leavesBandAt: instant.nullable() }).nullable(),
  /** What this advice is expected to do; null when it is the pencil's. */
  expects: adviceChoice.nullable(),
  /** The other choices, the best first. */
  alternatives: z.array(adviceChoice),
  source: z.enum(['forecast', 'pencil-rule']),
});
export type AdviceView = z.infer<typeof adviceView>;
