import { z } from 'zod';
import { commandKey } from './field.js';

/** Where alarms and due checks are posted; null where nowhere. */
export const webhookView = z.object({ url: z.string().nullable() });
export type WebhookView = z.infer<typeof webhookView>;
export const saveWebhook = z.strictObject({ key: commandKey, url: z.url({ protocol: /^https?$/ }).max(500).nullable() });
/** Shown once: what the house signs its messages with. */
export const webhookSaved = z.object({ secret: z.string().nullable() });
export type WebhookSaved = z.infer<typeof webhookSaved>;
export const makeCalendarAddress = z.strictObject({ key: commandKey });
/** Whoever has it reads the person's shifts. */
export const calendarAddress = z.object({ path: z.string() });
export type CalendarAddress = z.infer<typeof calendarAddress>;
