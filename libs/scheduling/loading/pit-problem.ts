import { zoneExposuresWPerM2 } from '@stokehold/domain/chamber';
import { mayDripOn, type Cut } from '@stokehold/domain/food';
import { epochS, HOUR_S, later, type EpochS } from '@stokehold/domain/quantity';
import type { PlacementGroup, PlacementProblem, PlacementZone } from '../placement/index.js';
import { BEARS_KG_PER_M2, COVERED_FRAC, type LoadingCook, type LoadingPit } from './facts.js';

/** What drips on what, as a rank: nothing above what ranks lower. Held to loading/pit-problem.test.ts against the food room's own rule. */
export function dripRank(cut: Pick<Cut, 'meat' | 'state'>): number {
  const kinds: readonly Pick<Cut, 'meat' | 'state'>[] = [{ meat: 'beef', state: 'intact' }, { meat: 'beef', state: 'ground' }, { meat: 'poultry', state: 'intact' }];
  return kinds.filter((kind) => mayDripOn(kind, cut)).length;
}

/** Zones of a pit's one grate with the heat and the fire's radiation that they have. */
export function zonesOf(pit: LoadingPit): readonly PlacementZone[] {
  const middleC = (pit.band.lowC + pit.band.highC) / 2;
  const radiant = zoneExposuresWPerM2(pit);
  let fromM = 0;
  return pit.zoneLengthsM.map((lengthM, z) => {
    const areaM2 = lengthM * pit.chamberDiameterM * COVERED_FRAC;
    const zone: PlacementZone = {
      id: `${z}`, grate: 0, fromM, toM: fromM + lengthM, areaM2, bearsKg: lengthM * pit.chamberDiameterM * BEARS_KG_PER_M2,
      airTempC: Math.round((middleC + (pit.zoneShiftK[z] ?? 0)) * 10) / 10, radiantWPerM2: Math.round(radiant[z]!), fireEnd: z < pit.zoneLengthsM.length / 2,
    };
    fromM += lengthM;
    return zone;
  });
}

/** When a cook goes on and comes off, as far as is known: as it is, as planned, or else from now on. */
export interface Stay {
  readonly onAt: EpochS;
  readonly offAt: EpochS;
}

export function stayOf(cook: LoadingCook, now: EpochS, planned: Stay | undefined): Stay {
  const onAt = cook.on?.at ?? planned?.onAt ?? now;
  const offAt = cook.doneAt?.[1] ?? planned?.offAt ?? cook.comesOffAt ?? later(onAt, 8 * HOUR_S);
  return { onAt, offAt: epochS(Math.max(offAt, onAt + 900, now + 900)) };
}

/** The grates of one pit and the cooks that are on it or planned for it. Without longer wood a free fire end is worth nothing. */
export function pitProblem(pit: LoadingPit, cooks: readonly { readonly cook: LoadingCook; readonly stay: Stay }[]): PlacementProblem {
  const zones = zonesOf(pit);
  const groups = cooks.map(({ cook, stay }): PlacementGroup => {
    const pieceKg = cook.weightKg / cook.pieces;
    return {
      id: cook.id, pieces: cook.pieces, pieceKg, pieceAreaM2: Math.round(cook.cut.areaM2PerKg * pieceKg * 1e4) / 1e4, ...stay,
      wantedTempC: (pit.band.lowC + pit.band.highC) / 2, bearsWPerM2: cook.cut.bearsWPerM2, dripRank: dripRank(cook.cut),
    };
  });
  return { pitId: pit.id, bearsKg: zones.reduce((sum, zone) => sum + zone.bearsKg, 0), zones, groups, ...(!pit.longerWood && { parameters: { fireEndPerHourS: 0 } }) };
}
