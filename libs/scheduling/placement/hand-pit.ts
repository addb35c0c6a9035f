import { epochS, type CookId, type PitId } from '@stokehold/domain/quantity';
import type { PlacementGroup, PlacementProblem, PlacementZone } from './problem.js';

const START = 1_790_000_000;

/** A zone of a pit made by hand, numbered from the fire end; for tests. */
export function handZone(number: number, made: Partial<PlacementZone> = {}): PlacementZone {
  return { id: `${number}`, grate: 0, fromM: number - 1, toM: number, areaM2: 0.4, bearsKg: 50, airTempC: 121, radiantWPerM2: 0, fireEnd: number === 1, ...made };
}

/** Pieces of a cook made by hand: ten hours from the start, 0.1 m2 and 5 kg each; for tests. */
export function handGroup(id: string, made: Partial<Omit<PlacementGroup, 'id' | 'onAt' | 'offAt'>> & { readonly onS?: number; readonly offS?: number } = {}): PlacementGroup {
  const { onS = 0, offS = 36_000, ...rest } = made;
  return { id: id as CookId, pieces: 2, pieceAreaM2: 0.1, pieceKg: 5, wantedTempC: 121, bearsWPerM2: 1000, dripRank: 1, onAt: epochS(START + onS), offAt: epochS(START + offS), ...rest };
}

/** A pit made by hand; for tests. */
export const handPit = (zones: readonly PlacementZone[], groups: readonly PlacementGroup[], more: Partial<PlacementProblem> = {}): PlacementProblem => ({ pitId: 'pit' as PitId, bearsKg: 200, zones, groups, ...more });
