import { z } from 'zod';

/**
 * Every refusal that a person can meet, by its stable code, with the HTTP status it travels under.
 * A refusal is not a bug: it happens on a good night, changes nothing, and says what to do.
 */
export const REFUSALS = {
  'input-invalid': 400,
  'not-signed-in': 401,
  'device-unknown': 401,
  'pin-wrong': 401,
  'pin-wait': 429,
  'pin-off': 403,
  'too-many-requests': 429,
  'device-too-fast': 429,
  'not-allowed': 403,
  'origin-foreign': 403,
  'code-unknown': 403,
  'first-run-done': 409,
  'first-run-token-wrong': 403,
  'not-found': 404,
  'pit-unknown': 404,
  'person-unknown': 404,
  'shift-unknown': 404,
  'lot-unknown': 404,
  'cook-unknown': 404,
  'service-unknown': 404,
  'food-entry-unknown': 404,
  'cut-not-valid': 409,
  'laxer-than-code': 409,
  'cook-not-on': 409,
  'already-wrapped': 409,
  'task-unknown': 404,
  'probe-unknown': 404,
  'not-a-table': 409,
  'source-taken': 409,
  'device-not-found': 404,
  'key-reused': 422,
  'name-taken': 409,
  'id-taken': 409,
  'last-manager': 409,
  'device-in-hand': 409,
  'pit-not-burning': 409,
  'pit-burning': 409,
  'check-too-old': 409,
  'check-in-the-future': 409,
  'lot-empty': 409,
  'counted-meanwhile': 409,
  'not-a-moisture': 409,
  'nothing-burns': 409,
  'cart-empty': 409,
  'lies-as-it-is': 409,
  'shift-ends-before-it-begins': 409,
  'shift-too-long': 409,
  'shift-overlaps': 409,
  'shift-has-ended': 409,
  'person-on-two-shifts': 409,
  'person-not-on-shift': 409,
  'break-outside-shift': 409,
  'hours-outside-shift': 409,
  'light-outside-shift': 409,
  'break-unknown': 404,
  'times-out-of-order': 409,
  'mix-impossible': 409,
  'pieces-more-than-cook': 409,
  'zone-unknown': 409,
  'zone-in-use': 409,
  'cook-is-off': 409,
  'service-in-the-past': 409,
  'task-done-already': 409,
  'no-plan': 409,
  'work-unknown': 404,
  'plan-breaks-rule': 409,
  'nothing-learned': 409,
  'alarm-unknown': 404,
  'alarm-not-shelvable': 409,
  'shelf-too-long': 409,
  'session-unknown': 404,
  'range-too-long': 409,
  'line-unknown': 404,
  'database-away': 503,
  'disk-full': 507,
  'unexpected': 500,
} as const satisfies Record<string, number>;

export type RefusalCode = keyof typeof REFUSALS;
/** A refusal as a value: the code, a sentence in English that says what to do, and the figures it speaks of. */
export interface Refusal {
  readonly code: RefusalCode;
  readonly detail: string;
  readonly values?: Readonly<Record<string, string | number>>;
}

/** RFC 9457 problem details, media type application/problem+json. */
export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  instance: z.string(),
  code: z.enum(Object.keys(REFUSALS) as [RefusalCode, ...RefusalCode[]]),
  values: z.record(z.string(), z.union([z.string(), z.number()])).optional(),
  /** For `input-invalid`: which field, and what it wants. */
  fields: z.array(z.object({ path: z.string(), wants: z.string() })).optional(),
});
export type Problem = z.infer<typeof problem>;
