import type { CookId } from '@stokehold/domain/quantity';
import type { Lies, PlacementLevels, PlacementPlan } from './plan.js';
import { placementParameter, type PlacementGroup, type PlacementProblem, type PlacementZone } from './problem.js';

/** A rule that a placement breaks. */
export interface PlacementViolation {
  readonly code:
    | 'unknown-cook' | 'unknown-zone' | 'pieces-not-whole' | 'pieces-more-than-cook' | 'pieces-missing' | 'zone-over-full' | 'zone-over-weight' | 'pit-over-weight'
    | 'scorches' | 'drips' | 'turn-missing' | 'turn-too-much' | 'swap-of-nothing' | 'wrong-fire-end' | 'wrong-level' | 'below-bound';
  readonly cookId?: CookId;
  readonly zoneId?: string;
  /** By how much: pieces, m2, kg or s. */
  readonly by?: number;
}

/** What a placement breaks and what it is worth. */
export interface Weighed {
  readonly violations: readonly PlacementViolation[];
  readonly levels: PlacementLevels;
}

interface Lain {
  readonly group: PlacementGroup;
  readonly zone: PlacementZone;
  readonly pieces: number;
}

const ROUNDING = 1e-6;
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Any placement, planned or made by hand, against every rule, and its levels counted from nothing. It shares no code with the planner. */
export function weighLies(problem: PlacementProblem, lies: Lies): Weighed {
  const strangers = lies.flatMap(({ cookId, zoneId }): PlacementViolation[] => {
    if (!problem.groups.some(({ id }) => id === cookId)) return [{ code: 'unknown-cook', cookId }];
    return problem.zones.some(({ id }) => id === zoneId) ? [] : [{ code: 'unknown-zone', cookId, zoneId }];
  });
  if (strangers.length > 0) return { violations: strangers, levels: { unplaced: Infinity, priceS: Infinity } };
  const lain = lies.map(({ cookId, zoneId, pieces }): Lain => ({ group: problem.groups.find(({ id }) => id === cookId)!, zone: problem.zones.find(({ id }) => id === zoneId)!, pieces }));
  const violations = [...counted(problem, lain), ...roomed(problem, lain), ...heated(problem, lain), ...dripped(lain)];
  return { violations, levels: { unplaced: sum(problem.groups.map((group) => (group.weight ?? 1) * (group.pieces - piecesOf(lain, group)))), priceS: priced(problem, lain) } };
}

const piecesOf = (lain: readonly Lain[], group: PlacementGroup) => sum(lain.filter((one) => one.group === group).map(({ pieces }) => pieces));

function counted({ groups }: PlacementProblem, lain: readonly Lain[]): readonly PlacementViolation[] {
  const odd = lain.filter(({ pieces }) => !Number.isSafeInteger(pieces) || pieces < 1).map(({ group, zone }): PlacementViolation => ({ code: 'pieces-not-whole', cookId: group.id, zoneId: zone.id }));
  return [...odd, ...groups.flatMap((group): PlacementViolation[] => (piecesOf(lain, group) > group.pieces ? [{ code: 'pieces-more-than-cook', cookId: group.id, by: piecesOf(lain, group) - group.pieces }] : []))];
}

/** At every moment at which something comes on: area and weight of each zone, weight of the pit. */
function roomed(problem: PlacementProblem, lain: readonly Lain[]): readonly PlacementViolation[] {
  const found = new Map<string, PlacementViolation>();
  const note = (violation: PlacementViolation) => {
    const key = `${violation.code}/${violation.zoneId}`;
    if ((found.get(key)?.by ?? 0) < violation.by!) found.set(key, violation);
  };
  for (const { group: { onAt: moment } } of lain) {
    const then = lain.filter(({ group }) => group.onAt <= moment && moment < group.offAt);
    for (const zone of problem.zones) {
      const there = then.filter((one) => one.zone === zone);
      const areaM2 = sum(there.map(({ group, pieces }) => group.pieceAreaM2 * pieces)) - zone.areaM2;
      const massKg = sum(there.map(({ group, pieces }) => group.pieceKg * pieces)) - zone.bearsKg;
      if (areaM2 > ROUNDING) note({ code: 'zone-over-full', zoneId: zone.id, by: areaM2 });
      if (massKg > ROUNDING) note({ code: 'zone-over-weight', zoneId: zone.id, by: massKg });
    }
    const overKg = sum(then.map(({ group, pieces }) => group.pieceKg * pieces)) - problem.bearsKg;
    if (overKg > ROUNDING) note({ code: 'pit-over-weight', by: overKg });
  }
  return [...found.values()];
}

/** Turns a piece of this cook needs here; Infinity where it would scorch between two looks. */
function turnsNeeded(problem: PlacementProblem, { group, zone }: Pick<Lain, 'group' | 'zone'>): number {
  const excess = zone.radiantWPerM2 - group.bearsWPerM2;
  if (!(excess > 0)) return 0;
  const standsS = Math.floor(placementParameter(problem, 'doseJPerM2') / excess);
  if (standsS < placementParameter(problem, 'leastTurnS')) return Infinity;
  return Math.ceil((group.offAt - group.onAt) / standsS) - 1;
}

const heated = (problem: PlacementProblem, lain: readonly Lain[]): readonly PlacementViolation[] =>
  lain.filter((one) => turnsNeeded(problem, one) === Infinity).map(({ group, zone }) => ({ code: 'scorches', cookId: group.id, zoneId: zone.id }));

const meet = (one: PlacementGroup, other: PlacementGroup) => Math.max(one.onAt, other.onAt) < Math.min(one.offAt, other.offAt);
const hangsOver = (one: PlacementZone, other: PlacementZone) => one.grate > other.grate && Math.max(one.fromM, other.fromM) < Math.min(one.toM, other.toM);

const dripped = (lain: readonly Lain[]): readonly PlacementViolation[] =>
  lain.filter((one) => lain.some((other) => hangsOver(one.zone, other.zone) && meet(one.group, other.group) && one.group.dripRank > other.group.dripRank))
    .map(({ group, zone }) => ({ code: 'drips', cookId: group.id, zoneId: zone.id }));

function priced(problem: PlacementProblem, lain: readonly Lain[]): number {
  const of = (name: Parameters<typeof placementParameter>[1]) => placementParameter(problem, name);
  const pieces = lain.map((one) => {
    const { group, zone } = one;
    const share = zone.radiantWPerM2 === 0 ? 0 : Math.min(1, zone.radiantWPerM2 / Math.max(1e-9, group.bearsWPerM2));
    return one.pieces * (Math.round(of('perKelvinS') * Math.abs(zone.airTempC - group.wantedTempC)) + Math.round(of('exposureS') * share) + turnsNeeded(problem, one) * of('turnS'));
  });
  const spread = problem.groups.map((group) => of('spreadS') * Math.max(0, new Set(lain.filter((one) => one.group === group).map(({ zone }) => zone)).size - 1));
  const disturbed = pairsOf(lain).map(([one, other]) => (one.zone === other.zone && meet(one.group, other.group) && one.group.offAt !== other.group.offAt ? of('disturbS') : 0));
  const reached = lain.flatMap((upper) => lain.map((lower) => (hangsOver(upper.zone, lower.zone) && meet(upper.group, lower.group) && lower.group.offAt < upper.group.offAt ? of('reachS') : 0)));
  return sum(pieces) + sum(spread) + sum(disturbed) + sum(reached) + Math.round((of('fireEndPerHourS') * fireEndTakenS(lain)) / 3600);
}

const pairsOf = (lain: readonly Lain[]) => lain.flatMap((one, i) => lain.slice(i + 1).flatMap((other) => (one.group === other.group ? [] : [[one, other] as const])));

/** Seconds in which something lies at the fire end: stays put one behind the other, what overlaps counted once. */
function fireEndTakenS(lain: readonly Lain[]): number {
  const stays = lain.filter(({ zone }) => zone.fireEnd).map(({ group }) => group).sort((a, b) => a.onAt - b.onAt);
  let [taken, until] = [0, -Infinity];
  for (const { onAt, offAt } of stays) {
    taken += Math.max(0, offAt - Math.max(onAt, until));
    until = Math.max(until, offAt);
  }
  return taken;
}

/**
 * Every rule that a plan breaks: cover, room, weight, scorching, dripping, turns, swaps, the free fire end, levels and bound.
 * An empty list means that it may be shown. Held to placement/checker.test.ts, where each rule is made to bite.
 */
export function checkPlacement(problem: PlacementProblem, plan: PlacementPlan): readonly PlacementViolation[] {
  const { violations, levels } = weighLies(problem, plan.placings);
  if (violations.some(({ code }) => code === 'unknown-cook' || code === 'unknown-zone')) return violations;
  const missing = problem.groups.flatMap((group): PlacementViolation[] => {
    const all = sum([...plan.placings, ...plan.unplaced].filter(({ cookId }) => cookId === group.id).map(({ pieces }) => pieces));
    return all < group.pieces ? [{ code: 'pieces-missing', cookId: group.id, by: group.pieces - all }] : all > group.pieces ? [{ code: 'pieces-more-than-cook', cookId: group.id, by: all - group.pieces }] : [];
  });
  const wrong = levels.unplaced !== plan.levels.unplaced || levels.priceS !== plan.levels.priceS;
  const below = levels.unplaced < plan.bound.unplaced || (levels.unplaced === plan.bound.unplaced && levels.priceS < plan.bound.priceS);
  return [...violations, ...missing, ...handled(problem, plan), ...fireEnd(problem, plan), ...(wrong ? [{ code: 'wrong-level' } as const] : []), ...(below ? [{ code: 'below-bound' } as const] : [])];
}

function handled(problem: PlacementProblem, plan: PlacementPlan): readonly PlacementViolation[] {
  const turns = plan.placings.flatMap(({ cookId, zoneId, pieces }): PlacementViolation[] => {
    const [group, zone] = [problem.groups.find(({ id }) => id === cookId)!, problem.zones.find(({ id }) => id === zoneId)!];
    const needed = turnsNeeded(problem, { group, zone });
    const at = plan.handlings.filter((one) => one.kind === 'turn' && one.cookId === cookId && one.zoneId === zoneId && one.pieces === pieces).map((one) => one.at as number).sort((a, b) => a - b);
    const standsS = placementParameter(problem, 'doseJPerM2') / Math.max(1e-9, zone.radiantWPerM2 - group.bearsWPerM2);
    const marks = [group.onAt as number, ...at, group.offAt as number];
    const tooLong = needed > 0 && marks.slice(1).some((mark, i) => mark - marks[i]! > standsS);
    return at.length < needed || tooLong ? [{ code: 'turn-missing', cookId, zoneId }] : at.length > needed ? [{ code: 'turn-too-much', cookId, zoneId }] : [];
  });
  const lies = (cookId: CookId, zoneId: string) => plan.placings.find((one) => one.cookId === cookId && one.zoneId === zoneId)?.pieces ?? 0;
  const swaps = plan.handlings.filter((one) => one.kind === 'swap').filter(({ cookId, zoneId, withZoneId, pieces }) => Math.min(lies(cookId, zoneId), lies(cookId, withZoneId)) < pieces);
  return [...turns, ...swaps.map(({ cookId, zoneId }): PlacementViolation => ({ code: 'swap-of-nothing', cookId, zoneId }))];
}

function fireEnd(problem: PlacementProblem, plan: PlacementPlan): readonly PlacementViolation[] {
  const groups = problem.groups.filter(({ id }) => plan.placings.some(({ cookId }) => cookId === id));
  const taken = plan.placings.filter(({ zoneId }) => problem.zones.some(({ id, fireEnd: near }) => near && id === zoneId)).map(({ cookId }) => problem.groups.find(({ id }) => id === cookId)!);
  const clash = plan.fireEndFree.some(({ from, until }) => taken.some(({ onAt, offAt }) => Math.max(onAt, from) < Math.min(offAt, until)));
  const lengthS = groups.length === 0 ? 0 : Math.max(...groups.map(({ offAt }) => offAt)) - Math.min(...groups.map(({ onAt }) => onAt));
  const free = sum(plan.fireEndFree.map(({ from, until }) => until - from));
  const owed = lengthS - fireEndTakenS(taken.map((group) => ({ group, zone: problem.zones.find(({ fireEnd: near }) => near)!, pieces: 1 })));
  return clash || free !== owed ? [{ code: 'wrong-fire-end', by: Math.abs(free - owed) }] : [];
}
