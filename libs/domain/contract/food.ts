import { z } from 'zod';
import { commandKey, cookId, costCents, frac, instant, pitId, sentAt, serviceId, shortText } from './field.js';
import { species } from './wood.js';

/** The silhouette that stands for a cut on every screen. */
export const cutShape = z.enum(['slab', 'round', 'ribs', 'bird', 'link']);
export type CutShape = z.infer<typeof cutShape>;

/** Of the heat of a cook's fire, so much from one species, until the food is wrapped. */
export const speciesWish = z.strictObject({ species, leastFrac: frac, mostFrac: frac });

/** Pieces of one cut that go on a pit together. */
export const cookSettings = z.strictObject({
  id: cookId,
  cut: shortText,
  shape: cutShape,
  pieces: z.number().int().min(1).max(400),
  weightKg: z.number().min(0.05).max(2000),
  serviceId: serviceId.nullable(),
  /** When it should come off, as the kitchen plans it. */
  comesOffAt: instant.nullable(),
  /** The kitchen's wish of wood; empty takes any. */
  mix: z.array(speciesWish).max(6).default([]),
});
export type CookSettings = z.infer<typeof cookSettings>;
export const saveCook = z.strictObject({ key: commandKey, cook: cookSettings });
export type SaveCook = z.infer<typeof saveCook>;

/** Where the whole cook lies from now on, zones counted from the fire end. */
export const placeCook = z.strictObject({
  key: commandKey,
  sentAt,
  cookId,
  lies: z.array(z.strictObject({ pitId, zone: z.number().int().min(0).max(5), pieces: z.number().int().min(1).max(400) })).max(60),
});
export type PlaceCook = z.infer<typeof placeCook>;
export const takeOff = z.strictObject({ key: commandKey, sentAt, offAt: instant, yieldKg: z.number().min(0).max(2000).optional() });
export type TakeOff = z.infer<typeof takeOff>;

/** When a cook will be done, as forecast last; `problem` says why there is no time. */
export const cookForecast = z.object({
  madeAt: instant,
  /** One in ten before p10; one in ten after p90; one in twenty after p95. Null: not in this heat. */
  p10At: instant.nullable(),
  p50At: instant.nullable(),
  p90At: instant.nullable(),
  p95At: instant.nullable(),
  neverFrac: z.number(),
  phase: z.enum(['warming', 'plateau', 'rising', 'done']),
  /** Middle estimate of the core at `madeAt`. */
  coreC: z.number().nullable(),
  wrapAt: instant.nullable(),
  hotYieldFrac: z.number().nullable(),
  problem: z.string().nullable(),
});
export type CookForecast = z.infer<typeof cookForecast>;

export const cookView = cookSettings.extend({
  onAt: instant.nullable(),
  offAt: instant.nullable(),
  yieldKg: z.number().nullable(),
  /** Absent until the first forecast. */
  forecast: cookForecast.optional(),
  lies: z.array(z.object({ pitId, zone: z.number().int(), pieces: z.number().int() })),
});
export type CookView = z.infer<typeof cookView>;

/** The meal the food is for. */
export const serviceSettings = z.strictObject({
  id: serviceId,
  name: shortText,
  readyBy: instant,
  portions: z.number().int().min(0).max(20_000),
});
export type ServiceSettings = z.infer<typeof serviceSettings>;
export const saveService = z.strictObject({ key: commandKey, service: serviceSettings });
export type SaveService = z.infer<typeof saveService>;

const woodShare = z.object({ lot: z.string(), splits: z.number(), massKg: z.number(), costCents });
const minuteShare = z.object({ person: z.string(), workedS: z.number(), costCents });
/** One cause of a difference between plan and actual, in cents and splits. */
const costCause = z.object({
  cause: z.enum(['longer-cook', 'hungrier-pit', 'wind', 'wet-lot', 'smaller-splits', 'dearer-wood', 'not-explained', 'more-hours', 'dearer-hours']), cents: z.number().int(), splits: z.number(),
});
export type CostCause = z.infer<typeof costCause>;
/** A pit that the service cooked on: the splits of its whole fire beside the first pull, up to now, and those put on in strong gusts. */
const pitAgainst = z.object({
  pit: z.string(), plannedSplits: z.number(), splits: z.number(),
  gusts: z.object({ lengthS: z.number(), /** What most of them blew onto. */ onto: z.enum(['firebox', 'stack', 'side']), plannedSplits: z.number(), splits: z.number() }).nullable(),
});
export type PitAgainst = z.infer<typeof pitAgainst>;
/** What a service has cost so far; shared fires are split by the weight of what they served, to the cent. */
export const serviceCost = z.object({
  service: serviceSettings,
  cooks: z.array(z.object({ cook: cookView, woodCents: costCents, crewCents: costCents, meatCents: costCents, totalCents: costCents, splits: z.number(), perServedKgCents: z.number().nullable() })),
  wood: z.array(woodShare),
  crew: z.array(minuteShare),
  woodCents: costCents,
  crewCents: costCents,
  meatCents: costCents,
  totalCents: costCents,
  perPortionCents: z.number().nullable(),
  perKgCents: z.number().nullable(),
  /** Splits put on fires of which no lot is known: they are in no price. */
  unpricedSplits: z.number().int(),
  /** Cooks whose meat nobody has priced: it is in no sum. */
  unpricedMeat: z.number().int(),
  /** Beside what was planned; null where no pull was made for that night. */
  against: z.object({ plannedWoodCents: z.number().int(), plannedSplits: z.number(), plannedCrewCents: z.number().int(), causes: z.array(costCause), pits: z.array(pitAgainst) }).nullable(),
});
export type ServiceCost = z.infer<typeof serviceCost>;
