import { z } from 'zod';
import { commandKey, costCents, frac, instant, lotId, moistureFrac, pitId } from './field.js';

/** Mean air of a month at the stack. */
const month = z.strictObject({ tempC: z.number().min(-40).max(50), humidityFrac: z.number().min(0.05).max(1) });
/** The yard's climate, January first. */
export const saveClimate = z.strictObject({ key: commandKey, months: z.array(month).length(12) });
export type SaveClimate = z.infer<typeof saveClimate>;

/** What a meter showed, before any correction. */
export const readLot = z.strictObject({
  key: commandKey,
  shownPercent: z.number().min(0).max(100),
  basis: z.enum(['dry', 'wet']),
  woodTempC: z.number().min(-10).max(90).nullable(),
  face: z.enum(['inside', 'outside']),
  measuredAt: instant,
});
export type ReadLot = z.infer<typeof readLot>;
export const meterRemark = z.enum(['above-fibre-saturation', 'below-meter-range', 'wood-temperature-unknown', 'outside-face']);
export const lotRead = z.object({ moisture: moistureFrac, deviationFrac: z.number(), atLeast: z.boolean(), remarks: z.array(meterRemark) });
export type LotRead = z.infer<typeof lotRead>;

/** How a lot dries: what is believed now, when it will be ready, and the weeks to come. */
export const seasoningView = z.object({
  lotId,
  state: z.enum(['ready', 'not-yet', 'not-within-three-years']),
  moisture: z.number(),
  deviationFrac: z.number(),
  readyFrac: frac,
  earliestAt: instant.nullable(),
  readyAt: instant.nullable(),
  latestAt: instant.nullable(),
  readings: z.array(z.object({ at: instant, moisture: z.number(), atLeast: z.boolean() })),
  curve: z.array(z.object({ at: instant, moisture: z.number(), low: z.number(), high: z.number() })),
});
export type SeasoningView = z.infer<typeof seasoningView>;
export const trimView = z.object({
  pitId, lotId,
  splits: z.number().int(),
  pieces: z.number().int(),
  pieceLengthM: z.number(),
  cuts: z.number().int(),
  offcuts: z.number().int(),
  offcutM: z.number(),
  /** A piece too short to be held against a saw. */
  short: z.boolean(),
});
export type TrimView = z.infer<typeof trimView>;
export const cartLastsView = z.object({
  pitId, state: z.enum(['lasts', 'haul-later', 'haul-now', 'empty']), lastsS: z.number(), lastsAtLeastS: z.number(), haulBy: instant.nullable(), missingKg: z.number(),
});
export type CartLastsView = z.infer<typeof cartLastsView>;
export const yardLastsView = z.object({
  state: z.enum(['enough', 'tight', 'short']), neededKg: z.number(), neededAtMostKg: z.number(), leftKg: z.number(), lastsS: z.number().nullable(),
});
export type YardLastsView = z.infer<typeof yardLastsView>;
export const purchaseView = z.object({
  neededBy: instant, cords: z.number(), dryKg: z.number(), orderSeasonedBy: instant, orderGreenBy: instant.nullable(), how: z.enum(['green', 'seasoned', 'seasoned-late']),
});
export type PurchaseView = z.infer<typeof purchaseView>;

export const pullLoadView = z.object({
  pitId, from: instant, until: instant, needJ: z.number(), heatJ: z.number(), shortJ: z.number(), reserveShortJ: z.number(),
  /** Heat of other wood than the kitchen wishes for. */
  mixOffJ: z.number(),
  wood: z.array(z.object({ lotId, /** Offcuts of the lot, to be taken along at lighting or after the wrap. */ isOffcut: z.boolean(), pieces: z.number().int(), isOnCart: z.boolean(), isTrimmed: z.boolean(), cuts: z.number().int(), offcuts: z.number().int() })),
});
export type PullLoadView = z.infer<typeof pullLoadView>;
export const pullChangeView = z.object({
  pitId, lotId, piecesBefore: z.number().int(), piecesAfter: z.number().int(), because: z.enum(['burns-more', 'burns-less', 'mix-asked', 'stock-changed', 'made-room']),
});
export const pullView = z.object({
  madeAt: instant,
  because: z.enum(['asked', 'runs-short', 'mix-asked', 'stock-gone']),
  loads: z.array(pullLoadView),
  /** Mean wetness of the wettest pit's wood above good wood. */
  worstWetFrac: z.number(),
  woodCents: z.number(),
  /** At most so far from the best that can be. */
  gapFrac: z.number(),
  changes: z.array(pullChangeView),
});
export type PullView = z.infer<typeof pullView>;
export const makePull = z.strictObject({ key: commandKey });
export type MakePull = z.infer<typeof makePull>;

export const woodyardView = z.object({
  climate: z.array(month),
  /** Nobody has said what the climate is: one of a mild inland yard stands in for it. */
  isClimateAssumed: z.boolean(),
  /** Ready at or below, dry basis. */
  readyAtFrac: z.number(),
  /** In the order in which to open them. */
  lots: z.array(seasoningView),
  trim: z.array(trimView),
  /** Names of those on the shift who may saw; null while no pit burns. */
  maySaw: z.array(z.string()).nullable(),
  carts: z.array(cartLastsView),
  yard: yardLastsView,
  purchases: z.array(purchaseView),
  pull: pullView.nullable(),
  /** Why the pull will be balanced again after the next check, or sooner where somebody asks for it. */
  repull: z.object({ because: z.enum(['runs-short', 'mix-asked', 'stock-gone']), pitId: pitId.nullable() }).nullable(),
});
export type WoodyardView = z.infer<typeof woodyardView>;

/** How the yard pays breaks, nights and long shifts; law and contract decide what may be set. */
export const payRules = z.strictObject({
  paidBreakUpToS: z.number().int().min(0).max(4 * 3600),
  /** Night hours by the yard's wall clock. */
  nightFrom: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
  nightUntil: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/),
  nightExtraPermille: z.number().int().min(0).max(3000),
  overtimeAfterS: z.number().int().min(0).max(24 * 3600),
  overtimeExtraPermille: z.number().int().min(0).max(3000),
});
export type PayRulesView = z.infer<typeof payRules>;
export const savePayRules = z.strictObject({ key: commandKey, rules: payRules });
export type SavePayRules = z.infer<typeof savePayRules>;
/** What a cook's meat cost. */
export const priceCook = z.strictObject({ key: commandKey, meatCents: costCents });
export type PriceCook = z.infer<typeof priceCook>;

/** Services of some weeks with what they cost. */
export const serviceCosts = z.array(z.object({
  id: z.uuid(), name: z.string(), readyBy: instant, portions: z.number().int(), splits: z.number(), woodCents: costCents, crewCents: costCents, meatCents: costCents, totalCents: costCents, perPortionCents: z.number().nullable(),
}));
export type ServiceCosts = z.infer<typeof serviceCosts>;
