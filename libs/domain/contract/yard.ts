import { z } from 'zod';
import { commandKey, headingDeg, personId, pitId, probeId, rateCents, role, shortText, yardId } from './field.js';
import { pinOrPassword } from './pin.js';

export const units = z.enum(['us', 'metric']);
export type Units = z.infer<typeof units>;

/** A place on the yard plan, metres from its top left corner. */
const onPlan = z.number().min(0).max(500);
const planPoint = z.strictObject({ xM: onPlan, yM: onPlan });

/** A place on the earth, degrees; north and east count up. */
export const place = z.strictObject({ latitudeDeg: z.number().min(-90).max(90), longitudeDeg: z.number().min(-180).max(180) });
export type Place = z.infer<typeof place>;

export const yardSettings = z.strictObject({
  name: shortText,
  /** A name of the time zone database, such as 'America/Chicago'. */
  timeZone: z.string().min(3).max(60),
  units,
  language: z.enum(['en', 'es']),
  planWidthM: z.number().min(5).max(500),
  planHeightM: z.number().min(5).max(500),
  /** The compass heading towards which the plan's top edge looks. */
  planTopDeg: headingDeg,
  woodPlace: planPoint,
  walkSpeedMPerS: z.number().min(0.3).max(3),
  /** Where the yard lies; without it boards know no sunset. */
  place: place.optional(),
  /** The wall board's screen and how far from it people stand: sizes on the wall follow from these. */
  screenDiagonalM: z.number().min(0.3).max(4),
  viewDistanceM: z.number().min(1).max(20),
});
export type YardSettings = z.infer<typeof yardSettings>;
export const saveYard = z.strictObject({ key: commandKey, yard: yardSettings });
export type SaveYard = z.infer<typeof saveYard>;

export const band = z.strictObject({ lowC: z.number().min(60).max(250), highC: z.number().min(60).max(260) })
  .refine(({ lowC, highC }) => highC > lowC, { message: 'the upper edge lies above the lower edge', path: ['highC'] });
export type Band = z.infer<typeof band>;

const zone = z.strictObject({ lengthM: z.number().min(0.1).max(5) });
const probeInPit = z.strictObject({ id: probeId, name: shortText, zone: z.number().int().min(0).max(5) });

/** A pit as it stands: firebox, chamber, stack; its fire end and its zones, counted from the fire end. */
export const pitSettings = z.strictObject({
  id: pitId,
  name: shortText,
  xM: onPlan,
  yM: onPlan,
  /** On which side the fire end lies for someone who stands before the pit's doors. */
  fireEnd: z.enum(['left', 'right']),
  /** The compass heading towards which the firebox end looks, away from the chamber. */
  fireEndHeadingDeg: headingDeg,
  chamberLengthM: z.number().min(0.6).max(12),
  chamberDiameterM: z.number().min(0.3).max(2.5),
  fireboxLengthM: z.number().min(0.3).max(2),
  fireboxDiameterM: z.number().min(0.3).max(2),
  steelThicknessM: z.number().min(0.001).max(0.03),
  stackHeightM: z.number().min(0.3).max(5),
  stackDiameterM: z.number().min(0.05).max(0.6),
  zones: z.array(zone).min(1).max(6),
  probes: z.array(probeInPit).max(12),
  band,
  /** A pit no longer in use keeps its records and leaves the plans. */
  retired: z.boolean(),
});
export type PitSettings = z.infer<typeof pitSettings>;
export const savePit = z.strictObject({ key: commandKey, pit: pitSettings });
export type SavePit = z.infer<typeof savePit>;

export const skill = z.enum(['fire', 'food', 'lifting', 'saw']);
export type Skill = z.infer<typeof skill>;
export const crewMember = z.strictObject({
  id: personId,
  name: shortText,
  role,
  language: z.enum(['en', 'es']),
  skills: z.array(skill).max(4),
  rateCentsPerHour: rateCents,
  /** Someone who has left keeps their records and cannot sign in. */
  left: z.boolean(),
});
export type CrewMember = z.infer<typeof crewMember>;
/** `pin` sets or resets what the person signs in with; without it the old one stays. */
export const saveCrewMember = z.strictObject({ key: commandKey, person: crewMember, pin: pinOrPassword.optional() });
export type SaveCrewMember = z.infer<typeof saveCrewMember>;

/** The yard as it is set up. */
export const setup = z.object({
  yard: yardSettings.extend({ id: yardId, practice: z.boolean() }),
  pits: z.array(pitSettings),
  crew: z.array(crewMember.extend({ hasPin: z.boolean() })),
});
export type Setup = z.infer<typeof setup>;
