import { epochS, randomStream, type CookId, type PitId } from '@stokehold/domain/quantity';
import type { PlacementGroup, PlacementProblem, PlacementZone } from './problem.js';

export interface GeneratedPit {
  readonly zones: number;
  readonly grates: 1 | 2;
  readonly cooks: number;
  /** Most pieces of a cook. */
  readonly pieces: number;
  readonly seed: number;
  /** Food area over grate area, about. Default 0.7. */
  readonly loadFrac?: number;
}

/** A drawn pit: hotter and brighter at the fire end, cooks of several sizes, heats and hours. The same seed gives the same pit. For tests and benches. */
export function generatedPit({ zones, grates, cooks, pieces, seed, loadFrac = 0.7 }: GeneratedPit): PlacementProblem {
  const random = randomStream(seed);
  const lengthM = 0.76;
  const made: PlacementZone[] = Array.from({ length: grates }, (_, grate) => Array.from({ length: zones }, (__, z): PlacementZone => ({
    id: grate === 0 ? `${z + 1}` : `${z + 1} upper`, grate, fromM: z * lengthM, toM: (z + 1) * lengthM, areaM2: grate === 0 ? 0.44 : 0.3, bearsKg: 60,
    airTempC: 118 + random.below(4) + (zones - z) * 3 + grate * 2, radiantWPerM2: Math.round((1800 + random.below(600)) / (z + 1) ** 2 / (grate + 1)), fireEnd: z === 0,
  }))).flat();
  const areaM2 = made.reduce((sum, zone) => sum + zone.areaM2, 0) * loadFrac;
  const groups = Array.from({ length: cooks }, (_, g): PlacementGroup => {
    const count = 1 + random.below(pieces);
    const onS = random.below(3) * 7200;
    const poultry = random.below(4) === 0;
    return {
      id: `cook-${g + 1}` as CookId, pieces: count, pieceAreaM2: Math.min(0.25, Math.max(0.01, Math.round((areaM2 / cooks / count) * (0.6 + 0.8 * random.next()) * 1000) / 1000)), pieceKg: 1 + random.below(7),
      onAt: epochS(1_790_000_000 + onS), offAt: epochS(1_790_000_000 + onS + (4 + random.below(8)) * 3600), wantedTempC: 118 + random.below(4) * 4,
      bearsWPerM2: 150 + random.below(12) * 100, dripRank: poultry ? 3 : 1 + random.below(2),
    };
  });
  return { pitId: 'pit' as PitId, bearsKg: 250, zones: made, groups };
}
