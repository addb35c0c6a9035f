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
export const buyLot = z.strictObject({ key: commandKey, lot: lotSettings, pieces });
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
});
export type RecountLot = z.infer<typeof recountLot>;

export const lotView = lotSettings.extend({
  pieceKg: z.number(),
  /** Net heat of one piece as it goes on the fire. */
  pieceHeatJ: z.number(),
  pieceCostCents: z.number(),
  boughtPieces: z.number().int(),
  inStack: z.number().int(),
  onCarts: z.number().int(),
  burned: z.number().int(),
  /** How it lies in each pit's firebox. */
  fits: z.array(z.object({ pitId, lies: z.enum(['across', 'lengthwise', 'too-long']) })),
});
export type LotView = z.infer<typeof lotView>;
export const cartView = z.object({
  pitId,
  splits: z.number().int(),
  lots: z.array(z.object({ lotId, pieces: z.number().int() })),
  /** Splits that this pit is expected to need until its shift ends. */
  needed: z.number(),
});
export type CartView = z.infer<typeof cartView>;
export const woodView = z.object({
  lots: z.array(lotView),
  carts: z.array(cartView),
  /** All splits, stack and carts, against what the burning pits need until the shift ends. */
  splitsLeft: z.number().int(),
  splitsNeeded: z.number(),
});
export type WoodView = z.infer<typeof woodView>;
export const woodMoved = z.object({ lotId, inStack: z.number().int(), onCart: z.number().int() });
export type WoodMoved = z.infer<typeof woodMoved>;
