import { z } from 'zod';
import { adviceAction } from './check.js';
import { commandKey, frac, instant, personId, pitId, shiftId } from './field.js';
import { probeEnd } from './fire-trouble.js';
import { band } from './yard.js';

/** A multiplier that a pit has shown beside its set-up value: middle of its logarithm, and how far that may be off. exp(0.11) loses 12 % more. */
const learnedFactor = z.object({ log: z.number(), sd: z.number() });
/** What a pit has shown of its own: heat it loses, how fast splits burn, how fast coals do. */
export const learned = z.object({ loss: learnedFactor, burn: learnedFactor, coal: learnedFactor });
export type LearnedView = z.infer<typeof learned>;

/** Why a forecast has nothing to be held against: its time is still to come, somebody was at the fire first, or nothing was measured then. */
export const uncompared = z.enum(['to-come', 'touched', 'not-measured']);
/** What came at one moment after a check, to be held against its fan. */
const toldPoint = z.object({
  aheadS: z.number().int(),
  cameC: z.number().nullable(),
  uncompared: uncompared.nullable(),
});
/** What had come when somebody looked again, or until now: the temperature then, and when the band was to be left and was. */
const toldOutcome = z.object({ at: instant, cameC: z.number(), wasToLeaveAt: instant.nullable(), leftAt: instant.nullable() });
/** One check with the forecast that was made right after it, as if nobody touched the fire again. */
export const toldCheck = z.object({
  checkId: z.uuid(),
  lookedAt: instant,
  /** What the phone advised when somebody went there; null where it advised nothing. */
  advised: adviceAction.nullable(),
  fan: z.object({ from: instant, stepS: z.number(), p10: z.array(z.number()), p50: z.array(z.number()), p90: z.array(z.number()) }),
  points: z.array(toldPoint),
  /** Null where nothing was measured then, or nobody looked again before the forecast ended. */
  outcome: toldOutcome.nullable(),
});
export type ToldCheck = z.infer<typeof toldCheck>;

/** How forecasts of one reach have fared, those of the first hour after lighting left out: roots of the mean squared errors, K, beside two that know nothing of fire. */
export const skillAt = z.object({
  aheadS: z.number().int(),
  count: z.number().int(),
  errorK: z.number(),
  /** As it stood when the forecast was made. */
  persistenceErrorK: z.number(),
  /** Straight on as in the quarter of an hour before; null where nothing was measured then. */
  trendErrorK: z.number().nullable(),
  /** Share of what came that lay inside the fan, which claims 0.8. */
  insideFrac: frac,
});
export type SkillAt = z.infer<typeof skillAt>;

/** Why a reading was kept and not used. */
export const unusedWhy = z.enum(['cannot-be', 'far-off', 'from-the-future']);

/** One fire over one night: what was forecast, what came, what the pit has taught. */
export const firePage = z.object({
  pitId,
  night: z.object({ shiftId, from: instant, until: instant, band }).nullable(),
  /** The nights of this pit that can be looked at, the last one first. */
  nights: z.array(z.object({ shiftId, startsAt: instant })),
  line: z.array(z.object({ at: instant, tempC: z.number(), measured: z.boolean() })),
  told: z.array(toldCheck),
  skill: z.array(skillAt),
  /** Of all measured moments that a forecast still spoke of, so many, and the share of them inside its fan. */
  inside: z.object({ count: z.number().int(), insideFrac: frac }).nullable(),
  /** What is learned of this pit: now, and at the checks of all its nights. */
  learned: z.object({
    now: learned.nullable(),
    course: z.array(learned.extend({ at: instant })),
    setBacks: z.array(z.object({ at: instant, by: personId.nullable(), reason: z.string() })),
  }),
  /** Readings that were kept and not used, in stretches of the night. */
  unused: z.array(z.object({ from: instant, until: instant, end: probeEnd, why: unusedWhy, count: z.number().int() })),
});
export type FirePage = z.infer<typeof firePage>;

/** Lets go of what was learned of a pit: it starts again from its set-up values. */
export const setLearnedBack = z.strictObject({ key: commandKey, reason: z.string().trim().min(3).max(200) });
export type SetLearnedBack = z.infer<typeof setLearnedBack>;
