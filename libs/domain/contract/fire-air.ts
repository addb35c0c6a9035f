import { z } from 'zod';

/** Firebox door, stack damper and wind screen as hands leave them; what the words stand for is said in the room of the fire. */
export const doorSet = z.enum(['shut', 'one-finger', 'usual', 'two-fingers', 'hand-wide']);
export const damperSet = z.enum(['half', 'three-quarters', 'open']);
export const airSet = z.strictObject({ door: doorSet, damper: damperSet, screen: z.boolean() });
export type AirSetView = z.infer<typeof airSet>;
