import { z } from 'zod';
import { commandKey, deviceId, deviceKind, instant, personId, role, shortText, yardId } from './field.js';
import { pin } from './pin.js';
import { yardSettings } from './yard.js';

export const language = z.enum(['en', 'es']);
export type Language = z.infer<typeof language>;

/** Shown once in the server's window when no manager exists yet; makes the yard, its manager and this device. */
export const firstRun = z.strictObject({
  token: z.string().min(20).max(200),
  yard: yardSettings,
  manager: z.strictObject({ name: shortText, pin, language }),
  deviceName: shortText,
});
export type FirstRun = z.infer<typeof firstRun>;

export const enrolDevice = z.strictObject({ code: z.string().trim().min(6).max(20), name: shortText });
export type EnrolDevice = z.infer<typeof enrolDevice>;

/** With the PIN, or with the password of who has one in its place. */
export const signIn = z.strictObject({ personId, pin: z.string().min(1).max(100) });
export type SignIn = z.infer<typeof signIn>;

/** Who may sign in on this device. */
export const signInChoices = z.object({
  yard: z.object({ id: yardId, name: z.string(), language, practice: z.boolean() }),
  device: z.object({ id: deviceId, name: z.string(), kind: deviceKind }),
  people: z.array(z.object({ id: personId, name: z.string(), language, by: z.enum(['pin', 'password']) })),
});
export type SignInChoices = z.infer<typeof signInChoices>;

/** Who is looking at this screen. A wall has no person. */
export const me = z.object({
  yard: z.object({ id: yardId, name: z.string(), language, practice: z.boolean() }),
  device: z.object({ id: deviceId, name: z.string(), kind: deviceKind }),
  person: z.object({ id: personId, name: z.string(), role, language }).nullable(),
});
export type Me = z.infer<typeof me>;

export const makeDeviceCode = z.strictObject({ key: commandKey, kind: deviceKind });
export type MakeDeviceCode = z.infer<typeof makeDeviceCode>;
export const deviceCode = z.object({ code: z.string(), kind: deviceKind, expiresAt: instant });
export type DeviceCode = z.infer<typeof deviceCode>;

export const device = z.object({
  id: deviceId,
  name: z.string(),
  kind: deviceKind,
  enrolledAt: instant,
  lastSeenAt: instant.nullable(),
  revokedAt: instant.nullable(),
});
export type Device = z.infer<typeof device>;
export const revokeDevice = z.strictObject({ key: commandKey });
export type RevokeDevice = z.infer<typeof revokeDevice>;

/** Somebody who is signed in on a device. */
export const sessionView = z.object({ deviceId, device: z.string(), personId, person: z.string(), beganAt: instant, lastUsedAt: instant });
export type SessionView = z.infer<typeof sessionView>;
export const endSession = z.strictObject({ key: commandKey });

export const health = z.object({
  status: z.enum(['ready', 'database-away']),
  firstRunNeeded: z.boolean(),
  version: z.string(),
});
export type Health = z.infer<typeof health>;
/** An answer that says only: done. */
export const done = z.object({ done: z.literal(true) });
export type Done = z.infer<typeof done>;
