import { HOUR_S } from '@stokehold/domain/quantity';
import type { PlacementGroup, PlacementProblem, PlacementZone } from './problem.js';
import { placementParameter } from './problem.js';

/** The problem in plain rows of numbers, as the search reads it; cook g, zone z. */
export interface PlacementModel {
  readonly problem: PlacementProblem;
  readonly zones: number;
  readonly pieces: readonly number[];
  /** Price of one piece, s; undefined where it has no place. */
  readonly price: readonly (readonly (number | undefined)[])[];
  /** Most pieces of g that z takes when it is otherwise empty. */
  readonly most: readonly (readonly number[])[];
  /** What one piece takes of each room it needs, as a share of that room. */
  readonly takes: readonly (readonly (readonly Take[])[])[];
  /** Room in area and mass, in whole mm2 and g, by number. */
  readonly rooms: readonly number[];
  /** Price of one unplaced piece of g: more than all prices together, x weight. */
  readonly unplacedS: readonly number[];
  readonly strictS: number;
  readonly spreadS: number;
  /** Cook g in z with cook h in w, flat by g, h, z, w: Infinity where it must not be. */
  readonly pairs: Float64Array;
  readonly fireEndZones: readonly number[];
  /** Price of the fire end being taken by these cooks, a bit per cook. */
  fireEndS(cooks: number): number;
}
export interface Take {
  readonly room: number;
  readonly amount: number;
}

/** How often a side that faces the fire has to be turned away, s; undefined when it bears the heat, 0 when it scorches. */
export function turnEveryS(problem: PlacementProblem, group: PlacementGroup, zone: PlacementZone): number | undefined {
  const over = zone.radiantWPerM2 - group.bearsWPerM2;
  if (over <= 0) return undefined;
  const every = Math.floor(placementParameter(problem, 'doseJPerM2') / over);
  return every < placementParameter(problem, 'leastTurnS') ? 0 : every;
}

/** Price of one piece there, s: off temperature, radiant heat, turns; undefined where it scorches or weighs too much. */
export function pieceS(problem: PlacementProblem, group: PlacementGroup, zone: PlacementZone): number | undefined {
  const every = turnEveryS(problem, group, zone);
  if (every === 0 || group.pieceKg > zone.bearsKg) return undefined;
  const turns = every === undefined ? 0 : Math.ceil((group.offAt - group.onAt) / every) - 1;
  const share = zone.radiantWPerM2 <= 0 ? 0 : Math.min(1, zone.radiantWPerM2 / Math.max(group.bearsWPerM2, 1e-9));
  const offS = placementParameter(problem, 'perKelvinS') * Math.abs(zone.airTempC - group.wantedTempC);
  return Math.round(offS) + Math.round(placementParameter(problem, 'exposureS') * share) + turns * placementParameter(problem, 'turnS');
}

const together = (one: PlacementGroup, other: PlacementGroup) => one.onAt < other.offAt && other.onAt < one.offAt;
const above = (upper: PlacementZone, lower: PlacementZone) => upper.grate > lower.grate && upper.fromM < lower.toM && lower.fromM < upper.toM;

/** Whether pieces of one cook may not, or at what price may, lie together with another's; upper and lower as they lie. */
function pairPriceS(problem: PlacementProblem, g: PlacementGroup, z: PlacementZone, h: PlacementGroup, w: PlacementZone): number {
  if (!together(g, h)) return 0;
  if (z === w) return g.offAt === h.offAt ? 0 : placementParameter(problem, 'disturbS');
  const [upper, lower] = above(z, w) ? [g, h] : above(w, z) ? [h, g] : [undefined, undefined];
  if (!upper || !lower) return 0;
  if (upper.dripRank > lower.dripRank) return Infinity;
  return lower.offAt < upper.offAt ? placementParameter(problem, 'reachS') : 0;
}

/** Seconds in which any of these cooks is on, by a bit per cook, priced by the hour. */
function fireEndPrice(problem: PlacementProblem): (cooks: number) => number {
  const marks = [...new Set(problem.groups.flatMap(({ onAt, offAt }) => [onAt, offAt]))].sort((a, b) => a - b);
  const cells = marks.slice(0, -1).map((from, i) => ({
    lengthS: marks[i + 1]! - from,
    on: problem.groups.reduce((bits, { onAt, offAt }, g) => (onAt <= from && from < offAt ? bits | (1 << g) : bits), 0),
  }));
  const perHour = placementParameter(problem, 'fireEndPerHourS');
  const known = new Map<number, number>();
  return (cooks) => {
    const before = known.get(cooks);
    if (before !== undefined) return before;
    const price = Math.round((perHour * cells.reduce((sum, { lengthS, on }) => (on & cooks ? sum + lengthS : sum), 0)) / HOUR_S);
    known.set(cooks, price);
    return price;
  };
}

const MM2_PER_M2 = 1e6;
const G_PER_KG = 1000;

/** Rooms: each zone's area and weight and the pit's weight, at each moment at which a cook comes on. */
function roomsOf({ zones, groups, bearsKg }: PlacementProblem): { readonly rooms: number[]; readonly takes: Take[][][] } {
  const moments = [...new Set(groups.map(({ onAt }) => onAt))].sort((a, b) => a - b);
  const perMoment = 2 * zones.length + 1;
  const floor = (value: number) => Math.floor(value + 1e-6);
  const rooms = moments.flatMap(() => [...zones.flatMap((zone) => [floor(zone.areaM2 * MM2_PER_M2), floor(zone.bearsKg * G_PER_KG)]), floor(bearsKg * G_PER_KG)]);
  const takes = groups.map((group) => {
    const at = moments.flatMap((moment, t) => (group.onAt <= moment && moment < group.offAt ? [t * perMoment] : []));
    const area = Math.ceil(group.pieceAreaM2 * MM2_PER_M2 - 1e-6);
    const mass = Math.ceil(group.pieceKg * G_PER_KG - 1e-6);
    return zones.map((_, z) => at.flatMap((base) => [
      { room: base + 2 * z, amount: area }, { room: base + 2 * z + 1, amount: mass }, { room: base + perMoment - 1, amount: mass },
    ]));
  });
  return { rooms, takes };
}

/** The problem compiled. Work grows with cooks x zones x moments. */
export function modelOf(problem: PlacementProblem): PlacementModel {
  const { zones, groups } = problem;
  const price = groups.map((group) => zones.map((zone) => pieceS(problem, group, zone)));
  const { rooms, takes } = roomsOf(problem);
  const most = groups.map((group, g) => zones.map((_, z) => (price[g]![z] === undefined ? 0 : Math.min(group.pieces, ...takes[g]![z]!.map(({ room, amount }) => Math.floor(rooms[room]! / amount))))));
  const pairs = Float64Array.from(groups.flatMap((g) => groups.flatMap((h) => zones.flatMap((z) => zones.map((w) => pairPriceS(problem, g, z, h, w))))));
  const fireEndS = fireEndPrice(problem);
  const spreadS = placementParameter(problem, 'spreadS');
  const finite = pairs.reduce((sum, one) => (one === Infinity ? sum : sum + one), 0);
  const strictS = 1 + finite + fireEndS(2 ** groups.length - 1) + groups.reduce((sum, { pieces }, g) => sum + pieces * Math.max(0, ...price[g]!.map((one) => one ?? 0)) + spreadS * zones.length, 0);
  return {
    problem, zones: zones.length, pieces: groups.map(({ pieces }) => pieces), price, most, takes, rooms, spreadS, strictS, fireEndS,
    unplacedS: groups.map(({ weight = 1 }) => weight * strictS),
    pairs, fireEndZones: zones.flatMap(({ fireEnd }, z) => (fireEnd ? [z] : [])),
  };
}

/** Price of cook g in zone z while cook h lies in zone w, s; Infinity where it must not be. */
export const pairS = ({ pairs, pieces, zones }: PlacementModel, g: number, z: number, h: number, w: number): number => pairs[((g * pieces.length + h) * zones + z) * zones + w]!;
