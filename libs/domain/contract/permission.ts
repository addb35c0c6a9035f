// Without zod: a phone looks up what its person may do.
export const ROLES = ['crew', 'lead', 'manager'] as const;
export type Role = (typeof ROLES)[number];
/** wall: reads, never writes. hand: a phone, tablet or desk on which people sign in. gateway: sends probe readings. */
export const DEVICE_KINDS = ['wall', 'hand', 'gateway'] as const;
export type DeviceKind = (typeof DEVICE_KINDS)[number];

/**
 * What a route asks for. open: nothing. device: an enrolled device. look: a wall, or a person signed in.
 * read-in: a gateway, or a person who records. record, plan, manage: a person of that standing.
 */
export type Permission = 'open' | 'device' | 'look' | 'read-in' | 'record' | 'plan' | 'manage';

/** The one table of who may do what. */
export const MAY: Readonly<Record<Role, readonly Permission[]>> = {
  crew: ['look', 'read-in', 'record'],
  lead: ['look', 'read-in', 'record', 'plan'],
  manager: ['look', 'read-in', 'record', 'plan', 'manage'],
};
export const DEVICE_MAY: Readonly<Record<DeviceKind, readonly Permission[]>> = {
  wall: ['device', 'look'],
  hand: ['device'],
  gateway: ['device', 'read-in'],
};
