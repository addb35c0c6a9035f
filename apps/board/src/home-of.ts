import type { Me } from '@stokehold/domain/contract';

/** Where a device begins: the wall on a wall, the round for the crew, the night for who leads it, else the way in. */
export function homeOf(me: Me | null): '/wall' | '/round' | '/night' | '/enrol' | '/sign-in' {
  if (!me) return '/enrol';
  if (me.device.kind === 'wall') return '/wall';
  if (!me.person) return '/sign-in';
  return me.person.role === 'crew' ? '/round' : '/night';
}

/** Whether this device may see the yard at all now: a wall, or a person signed in. */
export const mayLook = (me: Me | null): me is Me => me !== null && (me.device.kind === 'wall' || me.person !== null);
