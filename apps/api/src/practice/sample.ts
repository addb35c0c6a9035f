import { band, cutShape, role, skill, species, speciesWish, yardSettings } from '@stokehold/domain/contract';
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const wall = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a wall time such as 18:30');
const name = z.string().min(1).max(60);
const pieces = z.number().int().min(1);
const span = { earliest: wall, latest: wall };

/** A night to practise on, as a file: the yard, its people, its wood, its food, and what the sky and the pits really do. */
const sampleNight = z.strictObject({
  note: z.string(),
  yard: yardSettings,
  pits: z.array(
    z.strictObject({
      name,
      xM: z.number(),
      yM: z.number(),
      fireEnd: z.enum(['left', 'right']),
      fireEndHeadingDeg: z.number(),
      chamberLengthM: z.number(),
      chamberDiameterM: z.number(),
      fireboxLengthM: z.number(),
      fireboxDiameterM: z.number(),
      steelThicknessM: z.number(),
      stackHeightM: z.number(),
      stackDiameterM: z.number(),
      zoneLengthsM: z.array(z.number()).min(1),
      band,
      lightAt: wall,
    }),
  ),
  people: z.array(
    z.strictObject({
      name,
      role,
      language: z.enum(['en', 'es']),
      skills: z.array(skill),
      rateCentsPerHour: z.number().int(),
      from: wall,
      to: wall,
      breaks: z.array(z.strictObject({ lengthMin: z.number().int(), ...span })),
    }),
  ),
  lots: z.array(
    z.strictObject({
      name,
      species,
      lengthM: z.number(),
      thicknessM: z.number(),
      moisture: z.number(),
      /** What the wood really holds, where the record is wrong. */
      trueMoisture: z.number().optional(),
      boughtDaysAgo: z.number().int(),
      pieces,
      priceCents: z.number().int(),
    }),
  ),
  carts: z.array(z.strictObject({ pit: name, lot: name, pieces })),
  services: z.array(z.strictObject({ name, readyBy: wall, nextDay: z.boolean(), portions: z.number().int() })),
  cooks: z.array(
    z.strictObject({
      cut: name,
      shape: cutShape,
      pieces,
      weightKg: z.number(),
      service: name,
      onAt: wall,
      comesOffAt: wall,
      mix: z.array(speciesWish).default([]),
      lies: z.array(z.strictObject({ pit: name, zone: z.number().int(), pieces })),
    }),
  ),
  shift: z.strictObject({ date: z.iso.date(), from: wall, to: wall }),
  truth: z.strictObject({
    /** How far the pits are from what the estimator takes them for, as a fraction. */
    spread: z.number().min(0).max(0.3),
    ambientTempC: z.number(),
    coolingCPerHour: z.number(),
    windMPerS: z.number(),
    windFromDeg: z.number(),
    gusts: z.array(z.strictObject({ at: wall, minutes: z.number(), windMPerS: z.number(), fromDeg: z.number() })),
    late: z.strictObject({ person: name, minutes: z.number() }).nullable(),
  }),
});
export type SampleNight = z.infer<typeof sampleNight>;

/** Reads a sample file; a file that cannot be one is refused with what to correct. */
export function readSample(file: string): SampleNight {
  const result = sampleNight.safeParse(JSON.parse(readFileSync(file, 'utf8')));
  if (result.success) return result.data;
  const wants = result.error.issues.slice(0, 10).map(({ path, message }) => `${path.join('.')}: ${message}`);
  throw new Error(`${file} is no sample night. Correct ${wants.join('; ')}.`);
}
