import { z } from 'zod';
import { instant, personId } from './field.js';

/** What somebody had of a night or of several, s. */
export const shareView = z.object({ thereS: z.number().int(), workedS: z.number().int(), unpleasantS: z.number().int(), walkedS: z.number().int() });
export type ShareView = z.infer<typeof shareView>;
/** How work, unpleasant work and walking were shared over the last nights, and how tonight shares them. */
export const fairnessView = z.object({
  since: instant,
  people: z.array(z.object({ personId, nights: z.number().int(), before: shareView.nullable(), tonight: shareView.nullable() })),
});
export type FairnessView = z.infer<typeof fairnessView>;
