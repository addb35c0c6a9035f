import { z } from 'zod';
import { commandKey, cookId, instant, note, personId, sentAt, shortText } from './field.js';
import { cookView, cutShape } from './food.js';

const fromTo = z.strictObject({ leastS: z.number().min(0).max(86_400), mostS: z.number().min(0).max(86_400) });
const share = z.number().min(0).max(1);

/** All that is known of a cut before a piece of it is bought; a yard keeps its own values beside those it started with. */
export const cutSettings = z.strictObject({
  code: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/).max(40),
  name: shortText,
  meat: z.enum(['beef', 'pork', 'lamb', 'poultry']),
  state: z.enum(['intact', 'ground', 'injected']),
  silhouette: cutShape,
  body: z.strictObject({ exponent: z.number(), halfThicknessM: z.number(), referenceKg: z.number(), thicknessPower: z.number() }),
  composition: z.strictObject({ waterFrac: share, proteinFrac: share, fatFrac: share, ashFrac: share }),
  startTempC: z.number(),
  /** Core temperature, hours at 90 °C, or both; the later decides. */
  done: z.strictObject({ coreTempC: z.number().nullable(), tenderHoursAt90: z.number().nullable() }),
  wrap: z.strictObject({ kind: z.enum(['foil', 'paper']), atCoreC: z.number() }).nullable(),
  rest: fromTo,
  hold: fromTo,
  bearsWPerM2: z.number(),
  areaM2PerKg: z.number(),
  yieldFrac: share,
  portionKg: z.number(),
  usualKg: z.number(),
  source: z.string().trim().max(300),
});
export type CutSettings = z.infer<typeof cutSettings>;
export const saveCut = z.strictObject({ key: commandKey, cut: cutSettings });
export type SaveCut = z.infer<typeof saveCut>;

const kelvinOwn = z.number().min(-10).max(120).nullable();
/** Which published set of limits a yard is held to, and its own stricter values; null: the code's. */
export const foodLimits = z.strictObject({
  edition: z.enum(['food-code-2022', 'food-code-2013', 'fsis-2021-option-1', 'fsis-2021-option-2', 'fsis-2021-option-3']),
  own: z.strictObject({
    hotHoldC: kelvinOwn,
    coldHoldC: kelvinOwn,
    poultryC: kelvinOwn,
    groundC: kelvinOwn,
    roastC: kelvinOwn,
    reheatC: kelvinOwn,
    coolingFirstS: z.number().min(60).max(86_400).nullable(),
    coolingTotalS: z.number().min(60).max(86_400).nullable(),
    comeUpS: z.number().min(60).max(86_400).nullable(),
  }),
  /** How far the yard's food probes may be off: limits are raised by it. */
  probeErrorK: z.number().min(0).max(3),
});
export type FoodLimits = z.infer<typeof foodLimits>;
export const saveFoodLimits = z.strictObject({ key: commandKey, limits: foodLimits });
export type SaveFoodLimits = z.infer<typeof saveFoodLimits>;

export const foodStage = z.enum(['cooking', 'holding', 'cooling', 'cold', 'reheating', 'out']);
export type FoodStage = z.infer<typeof foodStage>;
export const limitName = z.enum(['cooking', 'roast-oven', 'come-up', 'hot-hold', 'cold-hold', 'cooling', 'reheat', 'time-control']);
export const remedy = z.enum([
  'keep-cooking', 'raise-heat', 'reheat-to-limit', 'cut-smaller', 'ice-bath', 'shallow-pans', 'move-to-colder', 'serve-now', 'serve-hot', 'recook', 'discard', 'measure-now', 'ask-process-authority',
]);

const foodTempC = z.number().min(-40).max(250);
/** One line of the food log: a temperature, a wrap, or what was done about a limit. */
const foodEntry = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('reading'), cookId, at: instant, stage: foodStage, tempC: foodTempC, note: note.optional(), corrects: z.uuid().optional() }),
  z.strictObject({ kind: z.literal('wrapped'), cookId, at: instant, in: z.enum(['foil', 'paper']), note: note.optional(), corrects: z.uuid().optional() }),
  z.strictObject({ kind: z.literal('action'), cookId, at: instant, action: remedy, limit: limitName, note: note.optional(), corrects: z.uuid().optional() }),
]);
export type FoodEntry = z.infer<typeof foodEntry>;
/** A correction is a line of its own that names the one it corrects; the old one stays readable. */
export const recordFood = z.strictObject({ key: commandKey, sentAt, entries: z.array(foodEntry).min(1).max(500) });
export type RecordFood = z.infer<typeof recordFood>;
export const foodRecorded = z.object({ kept: z.number().int() });

/** What became of a reading in the forecast. */
export const readingVerdict = z.enum(['used', 'probe-moved', 'reads-pit-air', 'reads-outside-air', 'hotter-than-its-air', 'jumped', 'before-on']);
export const foodEntryView = z.object({
  id: z.uuid(),
  cookId,
  kind: z.enum(['reading', 'wrapped', 'action']),
  at: instant,
  stage: foodStage.nullable(),
  tempC: z.number().nullable(),
  wrappedIn: z.enum(['foil', 'paper']).nullable(),
  action: remedy.nullable(),
  limit: limitName.nullable(),
  note: z.string().nullable(),
  personId: personId.nullable(),
  /** True where a gateway sent it. */
  byProbe: z.boolean(),
  corrects: z.uuid().nullable(),
  corrected: z.boolean(),
  verdict: readingVerdict.nullable(),
});
export type FoodEntryView = z.infer<typeof foodEntryView>;

const held = z.object({ tempC: z.number(), durationS: z.number() });
/** A record held against one limit: what was measured against which section, never more. */
export const findingView = z.object({
  limit: limitName,
  code: z.enum(['food-code', 'fsis-appendix-a', 'fsis-appendix-b']),
  edition: z.string(),
  section: z.string(),
  outcome: z.enum(['met', 'open', 'at-risk', 'missed', 'not-measured']),
  measured: held.nullable(),
  required: held,
  runsOutAt: instant.nullable(),
  remedies: z.array(remedy),
  /** What was done about it, where a line of the log says so. */
  answered: z.boolean(),
});
export type FindingView = z.infer<typeof findingView>;

/** One cook as its page shows it: the forecast in full, the log, and each limit. */
export const cookCourse = z.object({
  cook: cookView,
  cut: cutSettings.nullable(),
  core: z.object({ from: instant, stepS: z.number(), p10: z.array(z.number()), p50: z.array(z.number()), p90: z.array(z.number()) }).nullable(),
  log: z.array(foodEntryView),
  findings: z.array(findingView),
});
export type CookCourse = z.infer<typeof cookCourse>;

/** What might be done or might happen to a cook on a pit. */
export const askCookWhatIf = z.strictObject({
  change: z.discriminatedUnion('what', [
    z.strictObject({ what: z.literal('opened'), at: instant, forS: z.number().min(10).max(7200) }),
    z.strictObject({ what: z.literal('slump'), at: instant, forS: z.number().min(60).max(36_000), byK: z.number().min(1).max(80) }),
    z.strictObject({ what: z.literal('hotter'), at: instant, byK: z.number().min(-40).max(60) }),
    z.strictObject({ what: z.literal('wrap'), at: instant, kind: z.enum(['foil', 'paper']) }),
    z.strictObject({ what: z.literal('no-wrap') }),
  ]),
});
/** Later (plus) or earlier (minus) than without it; null where either never gets there. */
export const cookWhatIf = z.object({ middleS: z.number().nullable(), lateS: z.number().nullable(), p50At: instant.nullable(), p95At: instant.nullable() });
export type CookWhatIf = z.infer<typeof cookWhatIf>;

/** What is meant for a cook after the pit: it rests on the bench as its cut asks, is kept hot, then cooled. */
export const askAfterPit = z.strictObject({
  holdIn: z.enum(['bench', 'insulated-box', 'warm-cabinet']),
  holdS: z.number().min(0).max(172_800),
  coolIn: z.enum(['chiller', 'moving-chiller', 'ice-bath']),
  /** Thickness of the pieces if it is cut. */
  sliceM: z.number().min(0.01).max(0.3),
});
export type AskAfterPit = z.infer<typeof askAfterPit>;
/** How it goes on, the middle of what is possible; a forecast, held against the yard's limits. */
export const afterPitView = z.object({
  /** When it came off, or is forecast to. */
  offAt: instant,
  leavesC: z.number(),
  peakC: z.number(),
  peakAt: instant,
  /** Null: not below the limit before it is cooled. */
  hold: z.object({ limitC: z.number(), section: z.string(), coreBelowAt: instant.nullable(), outsideBelowAt: instant.nullable(), endsC: z.number() }),
  cool: z.object({
    fromAt: instant,
    section: z.string(),
    advice: z.enum(['cools-whole', 'cut-by', 'cut-before-it-goes-in', 'too-slow-even-cut']),
    /** Latest time to cut it, where there is one. */
    byAt: instant.nullable(),
    /** Thickest flat pieces that cool in time from when cooling begins; null: not even thin ones. */
    thickestM: z.number().nullable(),
  }),
});
export type AfterPitView = z.infer<typeof afterPitView>;
