import { ok, refuse, type CookId, type Result } from '@stokehold/domain/quantity';
import { firstWrong, outOfRange } from '../search/index.js';
import { MOST_GROUPS, MOST_ZONES, PLACEMENT_PARAMETERS, type PlacementGroup, type PlacementProblem, type PlacementZone } from './problem.js';

/** Why a problem is no problem, and the part that has to be mended. */
export type PlacementRefusal =
  | { readonly code: 'no-zones' }
  | { readonly code: 'too-many'; readonly what: 'zones' | 'cooks'; readonly most: number }
  | { readonly code: 'same-id-twice'; readonly id: string }
  | { readonly code: 'zone-empty'; readonly zoneId: string }
  | { readonly code: 'zones-overlap'; readonly zoneId: string; readonly withZoneId: string }
  | { readonly code: 'number-out-of-range'; readonly where: string; readonly value: number; readonly min: number; readonly max: number }
  | { readonly code: 'weight-not-above-zero'; readonly cookId: CookId }
  | { readonly code: 'piece-heavier-than-pit-bears'; readonly cookId: CookId; readonly pieceKg: number; readonly bearsKg: number }
  | { readonly code: 'piece-larger-than-any-zone'; readonly cookId: CookId; readonly pieceAreaM2: number; readonly areaM2: number }
  | { readonly code: 'off-before-on'; readonly cookId: CookId };

type Found = PlacementRefusal | undefined;

/**
 * A problem that planner and checker can trust, or the first thing wrong with it. Too much food for the grate is no refusal:
 * the plan then lists what has no place. Held to placement/validate.test.ts.
 */
export function validatePlacement(problem: PlacementProblem): Result<PlacementProblem, PlacementRefusal> {
  const refusal = countsOf(problem) ?? firstWrong(problem.zones, (zone) => zoneOf(zone, problem)) ?? firstWrong(problem.groups, (group) => groupOf(group, problem)) ?? parametersOf(problem);
  return refusal ? refuse(refusal) : ok(problem);
}

function within(where: string, value: number, min: number, max: number): Found {
  return value >= min && value <= max ? undefined : { code: 'number-out-of-range', where, value, min, max };
}

function countsOf({ zones, groups, bearsKg }: PlacementProblem): Found {
  if (zones.length === 0) return { code: 'no-zones' };
  if (zones.length > MOST_ZONES) return { code: 'too-many', what: 'zones', most: MOST_ZONES };
  if (groups.length > MOST_GROUPS) return { code: 'too-many', what: 'cooks', most: MOST_GROUPS };
  const ids = [...zones.map(({ id }) => id), ...groups.map(({ id }) => `cook/${id}`)].sort();
  const twice = ids.find((id, i) => id === ids[i + 1]);
  return twice === undefined ? within('bearsKg', bearsKg, 0.1, 1e5) : { code: 'same-id-twice', id: twice.replace(/^cook\//, '') };
}

function zoneOf(zone: PlacementZone, { zones }: PlacementProblem): Found {
  const at = `zones.${zone.id}`;
  if (!(zone.toM > zone.fromM) || !(zone.areaM2 > 0)) return { code: 'zone-empty', zoneId: zone.id };
  const other = zones.find((one) => one !== zone && one.grate === zone.grate && one.fromM < zone.toM && zone.fromM < one.toM);
  if (other) return { code: 'zones-overlap', zoneId: zone.id, withZoneId: other.id };
  if (!Number.isSafeInteger(zone.grate)) return { code: 'number-out-of-range', where: `${at}.grate`, value: zone.grate, min: 0, max: 5 };
  return within(`${at}.grate`, zone.grate, 0, 5) ?? within(`${at}.fromM`, zone.fromM, 0, 20) ?? within(`${at}.toM`, zone.toM, 0, 20) ?? within(`${at}.areaM2`, zone.areaM2, 1e-4, 100) ??
    within(`${at}.bearsKg`, zone.bearsKg, 0, 1e5) ?? within(`${at}.airTempC`, zone.airTempC, -60, 700) ?? within(`${at}.radiantWPerM2`, zone.radiantWPerM2, 0, 2e5);
}

function groupOf(group: PlacementGroup, { zones, bearsKg }: PlacementProblem): Found {
  const at = `groups.${group.id}`;
  if (!(group.pieceKg > 0)) return { code: 'weight-not-above-zero', cookId: group.id };
  const bears = Math.min(bearsKg, Math.max(...zones.map((zone) => zone.bearsKg)));
  if (group.pieceKg > bears) return { code: 'piece-heavier-than-pit-bears', cookId: group.id, pieceKg: group.pieceKg, bearsKg: bears };
  const areaM2 = Math.max(...zones.map((zone) => zone.areaM2));
  if (group.pieceAreaM2 > areaM2) return { code: 'piece-larger-than-any-zone', cookId: group.id, pieceAreaM2: group.pieceAreaM2, areaM2 };
  if (!(group.offAt > group.onAt)) return { code: 'off-before-on', cookId: group.id };
  if (!Number.isSafeInteger(group.pieces)) return { code: 'number-out-of-range', where: `${at}.pieces`, value: group.pieces, min: 1, max: 400 };
  return within(`${at}.pieces`, group.pieces, 1, 400) ?? within(`${at}.pieceAreaM2`, group.pieceAreaM2, 1e-4, 100) ?? within(`${at}.wantedTempC`, group.wantedTempC, -60, 400) ??
    within(`${at}.bearsWPerM2`, group.bearsWPerM2, 0, 2e5) ?? within(`${at}.dripRank`, group.dripRank, 0, 9) ?? within(`${at}.weight`, group.weight ?? 1, 1, 9);
}

function parametersOf({ parameters }: PlacementProblem): Found {
  const name = outOfRange(PLACEMENT_PARAMETERS, parameters);
  return name && within(`parameters.${name}`, parameters?.[name] ?? 0, PLACEMENT_PARAMETERS[name].min, PLACEMENT_PARAMETERS[name].max);
}
