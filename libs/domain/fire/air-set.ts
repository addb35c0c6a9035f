import type { Air } from './pit.js';

/** Firebox door as hands set it, from shut to a hand wide. 'usual' is everyday firing, about an inch. */
export type DoorSet = 'shut' | 'one-finger' | 'usual' | 'two-fingers' | 'hand-wide';
/** Stack damper as hands set it; wide open is the way of clean smoke. */
export type DamperSet = 'half' | 'three-quarters' | 'open';

/** All of them, from least air to most. */
export const DOORS: readonly DoorSet[] = ['shut', 'one-finger', 'usual', 'two-fingers', 'hand-wide'];
/** All of them, from least air to most. */
export const DAMPERS: readonly DamperSet[] = ['half', 'three-quarters', 'open'];

/** How a person leaves the air of a fire behind. */
export interface AirSet {
  readonly door: DoorSet;
  readonly damper: DamperSet;
  /** A wind screen stands before the firebox. */
  readonly screen: boolean;
}
/** Everyday firing. Source: common practice, no source (door open about 1 in, damper wide open). */
export const USUAL_AIR_SET: AirSet = { door: 'usual', damper: 'open', screen: false };

/** What the words stand for, m: a finger laid flat is about 12 mm thick, two side by side 37 wide, a hand 90. Source: common practice, no source. */
const DOOR_GAP_M: Readonly<Record<DoorSet, number>> = { shut: 0, 'one-finger': 0.012, usual: 0.0254, 'two-fingers': 0.037, 'hand-wide': 0.09 };
const DAMPER_FRAC: Readonly<Record<DamperSet, number>> = { half: 0.5, 'three-quarters': 0.75, open: 1 };

/** Door gap, damper and screen as the fire feels them. */
export const airOf = ({ door, damper, screen }: AirSet): Air => ({ doorGapM: DOOR_GAP_M[door], damperFrac: DAMPER_FRAC[damper], ...(screen && { screened: true }) });

/** The set that comes nearest to an air given in metres. */
export function nearestAirSet(air: Air): AirSet {
  const nearest = <S extends string>(sets: readonly S[], value: (set: S) => number, wanted: number) =>
    sets.reduce((best, set) => (Math.abs(value(set) - wanted) < Math.abs(value(best) - wanted) ? set : best));
  return {
    door: nearest(DOORS, (set) => DOOR_GAP_M[set], air.doorGapM),
    damper: nearest(DAMPERS, (set) => DAMPER_FRAC[set], air.damperFrac),
    screen: air.screened === true,
  };
}

/** What of the air differs, the screen first: it goes up before the door is touched. */
export const airChanges = (from: AirSet, to: AirSet): readonly (keyof AirSet)[] =>
  (['screen', 'door', 'damper'] as const).filter((part) => from[part] !== to[part]);
