import type { DeviceKind, Language, Permission, Role } from '@stokehold/domain/contract';
import { DEVICE_MAY, MAY } from '@stokehold/domain/contract';
import type { DeviceId, PersonId, YardId } from '@stokehold/domain/quantity';

/** Who asks: an enrolled device of a yard and, where somebody signed in on it, that person. */
export interface Actor {
  readonly yardId: YardId;
  readonly device: { readonly id: DeviceId; readonly kind: DeviceKind; readonly name: string };
  readonly person?: { readonly id: PersonId; readonly name: string; readonly role: Role; readonly language: Language };
}

/** The one place where the table of permissions is asked. */
export const may = (actor: Actor, permission: Permission): boolean =>
  permission === 'open' ||
  DEVICE_MAY[actor.device.kind].includes(permission) ||
  (actor.person !== undefined && MAY[actor.person.role].includes(permission));
