import { z } from 'zod';
import { commandKey, costCents, instant, lotId, moistureFrac, note, pitId, sentAt, shortText } from './field.js';

export const species = z.enum([
  'shagbark-hickory', 'pecan', 'white-oak', 'red-oak', 'post-oak', 'live-oak', 'sugar-maple', 'black-cherry', 'white-ash', 'beech',
  'red-alder', 'apple', 'mesquite',
]);
const pieces = z.number().int().min(1).max(5000);

/** Wood bought together. */
export const lotSettings = z.strictObject({
  id: lotId,
  name: shortText,
  species,
  lengthM: z.number().min(0.05).max(1.5),
  thicknessM: z.number().min(0.02).max(0.4),
  moisture: moistureFrac,
  boughtAt: instant,
  /** What the whole lot cost, delivered. */
  priceCents: costCents,
});
export type LotSettings = z.infer<typeof lotSettings>;
/** What else was measured of a delivery, beside the splits that were counted. */
const alsoMeasured = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('cords'), cords: z.number().min(0.01).max(1000) }),
  z.strictObject({ by: z.literal('weight'), massKg: z.number().min(1).max(1e6) }),
  z.strictObject({ by: z.literal('rows'), rows: z.number().int().min(1).max(200), lengthM: z.number().min(0.1).max(50), heightM: z.number().min(0.1).max(5) }),
]);
export const buyLot = z.strictObject({
  key: commandKey, lot: lotSettings, pieces,
  also: z.array(alsoMeasured).max(3).optional(),
  cutAt: instant.optional(),
  splitAt: instant.optional(),
  /** How much the length of single splits differs, one deviation. */
  lengthDeviationM: z.number().min(0).max(0.3).optional(),
});
/** Something about a delivery that does not add up; it was taken in all the same. */
export const deliveryRemark = z.object({
  code: z.enum(['measures-disagree', 'sold-as-package', 'no-price', 'price-unusual', 'fits-nowhere', 'too-wet-to-burn-now']),
  /** Of measures that disagree: which, and how much of the counted wood it finds. */
  second: z.string().optional(),
  ratio: z.number().optional(),
});
export const lotBought = z.object({ done: z.literal(true), remarks: z.array(deliveryRemark) });
export type LotBought = z.infer<typeof lotBought>;
export type BuyLot = z.infer<typeof buyLot>;
/** A meter reading on a freshly split inside face, dry basis. */
export const measureLot = z.strictObject({ key: commandKey, moisture: moistureFrac, measuredAt: instant });
export type MeasureLot = z.infer<typeof measureLot>;
/** pull: from the stack to a pit's cart. bring-back: from the cart to the stack. */
export const moveWood = z.strictObject({ key: commandKey, sentAt, lotId, pitId, pieces, way: z.enum(['pull', 'bring-back']) });
export type MoveWood = z.infer<typeof moveWood>;
/** What a count found lying there; the difference is kept as its own entry with the reason. */
export const recountLot = z.strictObject({
  key: commandKey, lotId, pitId: pitId.nullable(), found: z.number().int().min(0).max(5000), reason: note.min(1),
  /** What the book said when the count began; if it says something else now, somebody moved wood meanwhile. */
  book: z.number().int().optional(),
});
export type RecountLot = z.infer<typeof recountLot>;
/** Splits of a pit's cart cut so that they lie across its firebox; what is left of them is counted as offcuts. */
export const trimSplits = z.strictObject({ key: commandKey, sentAt, lotId, pitId, splits: pieces });
export type TrimSplits = z.infer<typeof trimSplits>;
export const splitsTrimmed = z.object({
  lotId,
  /** Splits of the lot on the cart now, and those of them that are trimmed. */
  onCart: z.number().int(),
  trimmed: z.number().int(),
  cuts: z.number().int(),
  /** Offcuts of the lot that lie there now. */
  offcuts: z.number().int(),
});
export type SplitsTrimmed = z.infer<typeof splitsTrimmed>;
/** Offcuts that went on a fire without a check: at lighting. */
export const burnOffcuts = z.strictObject({ key: commandKey, sentAt, pitId, pieces });
export type BurnOffcuts = z.infer<typeof burnOffcuts>;
/** `open`: offcuts that went on and that the book knew nothing of. */
export const offcutsBurned = z.object({ left: z.number().int(), open: z.number().int() });
export type OffcutsBurned = z.infer<typeof offcutsBurned>;
/** What a count of a lot's offcuts found. */
export const recountOffcuts = z.strictObject({ key: commandKey, lotId, found: z.number().int().min(0).max(5000), reason: note.min(1), book: z.number().int().optional() });
export type RecountOffcuts = z.infer<typeof recountOffcuts>;
export const offcutsCounted = z.object({ lotId, offcuts: z.number().int() });
export type OffcutsCounted = z.infer<typeof offcutsCounted>;

export const lotView = lotSettings.extend({
  pieceKg: z.number(),
  /** Net heat of one piece as it goes on the fire. */
  pieceHeatJ: z.number(),
  pieceCostCents: z.number(),
  boughtPieces: z.number().int(),
  inStack: z.number().int(),
  onCarts: z.number().int(),
  burned: z.number().int(),
  /** Left over from trimming, for lighting and for after the wrap. */
  offcuts: z.number().int(),
  /** How it lies in each pit's firebox. */
  fits: z.array(z.object({ pitId, lies: z.enum(['across', 'lengthwise', 'too-long']) })),
});
export type LotView = z.infer<typeof lotView>;
export const cartView = z.object({
  pitId,
  splits: z.number().int(),
  /** `trimmed`: those that were cut to lie across here. */
  lots: z.array(z.object({ lotId, pieces: z.number().int(), trimmed: z.number().int() })),
  /** Splits that this pit is expected to need until its shift ends. */
  needed: z.number(),
});
export type CartView = z.infer<typeof cartView>;
export const woodView = z.object({
  lots: z.array(lotView),
  carts: z.array(cartView),
  /** Splits that are dry enough to burn, in the stack and on carts, against what the burning pits need until the shift ends. */
  splitsLeft: z.number().int(),
  splitsNeeded: z.number(),
});
export type WoodView = z.infer<typeof woodView>;
export const woodMoved = z.object({ lotId, inStack: z.number().int(), onCart: z.number().int() });
export type WoodMoved = z.infer<typeof woodMoved>;
