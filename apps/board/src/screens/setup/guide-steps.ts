import type { Device, Setup, YardState } from '@stokehold/domain/contract';

export const STEPS = ['yard', 'pits', 'plan', 'crew', 'wall', 'phones', 'wood', 'night', 'practice'] as const;
export type Step = (typeof STEPS)[number];

/** Where each step is done. */
export const PLACE_OF: Readonly<Record<Exclude<Step, 'practice'>, string>> = {
  yard: '/setup?show=yard', pits: '/setup?show=pits', plan: '/setup?show=plan', crew: '/setup?show=crew',
  wall: '/setup?show=devices', phones: '/setup?show=devices', wood: '/woodyard', night: '/night?show=shift',
};

/** What is known of the yard, as far as a first run goes. */
export interface SoFar {
  readonly setup: Pick<Setup, 'pits' | 'crew'> & { readonly yard: Pick<Setup['yard'], 'place'> };
  readonly devices: readonly Pick<Device, 'kind' | 'revokedAt'>[];
  readonly lots: YardState['wood']['lots'];
  /** Whether a shift runs or is planned. */
  readonly hasShift: boolean;
}

const apart = (pits: Setup['pits']) => new Set(pits.map(({ xM, yM }) => `${xM} ${yM}`)).size === pits.length;

/** Which steps of a first run are done, told from the yard itself: nobody ticks anything. The practice night is never done: it may always be run. */
export function stepsDone({ setup, devices, lots, hasShift }: SoFar): ReadonlySet<Step> {
  const pits = setup.pits.filter(({ retired }) => !retired);
  const here = devices.filter(({ revokedAt }) => revokedAt === null);
  const done: Readonly<Record<Step, boolean>> = {
    yard: setup.yard.place !== undefined,
    pits: pits.length > 0,
    plan: pits.length > 0 && apart(pits),
    crew: setup.crew.filter(({ hasPin, left }) => hasPin && !left).length > 1,
    wall: here.some(({ kind }) => kind === 'wall'),
    phones: here.filter(({ kind }) => kind === 'hand').length > 1,
    wood: lots.length > 0,
    night: hasShift,
    practice: false,
  };
  return new Set(STEPS.filter((step) => done[step]));
}
