import { z } from 'zod';
import { cookId, costCents, frac, instant, pitId, serviceId } from './field.js';

const zoneNumber = z.number().int();
const zoneHindrance = z.enum(['scorches', 'too-heavy', 'drips', 'dripped-on', 'full']);

/** Why a cook lies where it lies. */
export const placingReason = z.enum(['only-place', 'cooler-side', 'right-heat', 'fire-end-free', 'least-price']);

/** What should lie where on one pit, zones counted from the fire end, 0 first. */
export const pitLoadingView = z.object({
  pitId,
  position: z.enum(['door', 'middle', 'throat']),
  zones: z.array(z.object({ zone: zoneNumber, airTempC: z.number(), radiantWPerM2: z.number(), fireEnd: z.boolean() })),
  placings: z.array(z.object({
    cookId, zone: zoneNumber, pieces: z.number().int(), offByK: z.number(), comesOffAt: instant, turnEveryS: z.number().nullable(), reason: placingReason,
    /** Another zone: what one piece there would cost more in crew work, or why it cannot lie there. */
    elsewhere: z.array(z.object({ zone: zoneNumber, moreS: z.number().nullable(), hindrance: zoneHindrance.nullable() })),
  })),
  unplaced: z.array(z.object({ cookId, pieces: z.number().int(), hindrances: z.array(z.object({ zone: zoneNumber, hindrance: zoneHindrance })) })),
  handlings: z.array(z.object({ kind: z.enum(['turn', 'swap']), at: instant, cookId, zone: zoneNumber, withZone: zoneNumber.nullable(), pieces: z.number().int() })),
  /** While nothing lies at the fire end, splits may lie lengthwise. */
  fireEndFree: z.array(z.object({ from: instant, until: instant })),
  priceS: z.number(),
  boundS: z.number(),
  proven: z.boolean(),
});
export type PitLoadingView = z.infer<typeof pitLoadingView>;

export const cookReason = z.enum(['fixed', 'only-way', 'shares-a-fire', 'least-cost', 'as-early-as-can-be']);
export const cookHelp = z.enum(['earlier', 'hotter', 'wrap', 'another-pit']);

/** Which cook on which pit when, from the services backwards. */
export const cookPlanView = z.object({
  lateLimitFrac: frac,
  starts: z.array(z.object({
    cookId, serviceId, pitId, tempC: z.number(), onAt: instant, wrapAt: instant.nullable(), latestOnAt: instant, offBy: instant, likelyOffAt: instant, offNotBefore: instant, offNotAfter: instant,
    lateFrac: frac, keptTooLongS: z.number(), reason: cookReason,
  })),
  unplaced: z.array(z.object({ cookId, hindrances: z.array(z.object({ pitId, hindrance: z.enum(['not-allowed', 'no-such-heat', 'too-heavy', 'too-large', 'full', 'no-time']) })) })),
  burns: z.array(z.object({ pitId, tempC: z.number(), lightAt: instant.nullable(), firstOnAt: instant, lastOffBy: instant, woodKg: z.number(), woodCents: costCents, crewS: z.number(), fullestFrac: z.number() })),
  services: z.array(z.object({
    serviceId, readyBy: instant, lateFrac: frac, atRisk: z.boolean(), promisableAt: instant.nullable(),
    help: z.array(z.object({ code: cookHelp, cookId, pitId, tempC: z.number(), onAt: instant, lateFrac: frac, moreCents: z.number().int() })),
  })),
  crewHours: z.array(z.object({ from: instant, neededS: z.number(), thereS: z.number() })),
  costCents: z.number().int(),
  boundCents: z.number().int(),
  proven: z.boolean(),
});
export type CookPlanView = z.infer<typeof cookPlanView>;

/** What no plan can be made for, and why; the rest is planned without it. */
export const setAsideCode = z.enum(['service-too-early', 'piece-too-heavy', 'too-large', 'weight-not-above-zero', 'no-way', 'cut-unknown', 'zones-wrong', 'too-many', 'not-plannable']);
export const setAsideView = z.object({
  cookId: cookId.nullable(), serviceId: serviceId.nullable(), pitId: pitId.nullable(), code: setAsideCode,
  /** For a service: the earliest time that can be promised, the cook that takes longest, and what it waits for. */
  earliestAt: instant.nullable(), waitsFor: z.enum(['cooking', 'fire-not-lit', 'pit-not-free']).nullable(), slowest: cookId.nullable(),
});
export type SetAsideView = z.infer<typeof setAsideView>;

export const loadingView = z.object({ madeAt: instant, cookPlan: cookPlanView.nullable(), pits: z.array(pitLoadingView), setAside: z.array(setAsideView) });
export type LoadingView = z.infer<typeof loadingView>;

/** Pieces moved by hand on one pit; without a zone they stand beside it. */
export const weighMove = z.strictObject({ pitId, cookId, pieces: z.number().int().min(1).max(400), fromZone: zoneNumber.min(0).max(5).nullable(), toZone: zoneNumber.min(0).max(5).nullable() });
export type WeighMove = z.infer<typeof weighMove>;
export const moveWeighed = z.object({
  moreS: z.number(), moreUnplaced: z.number(),
  breaks: z.array(z.object({ code: z.enum(['unknown', 'pieces-wrong', 'over-full', 'over-weight', 'scorches', 'drips']), zone: zoneNumber.nullable() })),
});
export type MoveWeighed = z.infer<typeof moveWeighed>;

/** A cook dragged to another time, nothing else moved. */
export const supposeCook = z.strictObject({ cookId, onAt: instant });
export type SupposeCook = z.infer<typeof supposeCook>;
export const cookSupposed = z.object({
  moreCents: z.number().int(),
  services: z.array(z.object({ serviceId, beforeLateFrac: frac, afterLateFrac: frac })),
  keptTooLongS: z.number(), crewOverS: z.number(),
  breaks: z.array(z.enum(['fixed', 'pit-not-ready', 'pit-not-free', 'over-full', 'over-weight', 'other'])),
});
export type CookSupposed = z.infer<typeof cookSupposed>;
