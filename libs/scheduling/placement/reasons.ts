import { pairS, turnEveryS, type PlacementModel } from './model.js';
import { placementParameter } from './problem.js';
import type { Elsewhere, Placing, PlacingReason, Unplaced, ZoneHindrance } from './plan.js';
import { ownCost, type Counts } from './search.js';

/** Price of a whole placement that keeps the rules, s, unplaced pieces included. */
function costOf(model: PlacementModel, counts: Counts): number {
  let cost = 0;
  let atFireEnd = 0;
  for (const [g, own] of counts.entries()) {
    cost += ownCost(model, g, own);
    if (own.some((x, z) => x > 0 && model.problem.zones[z]!.fireEnd)) atFireEnd |= 1 << g;
    for (let h = 0; h < g; h++) for (const [z, x] of own.entries()) for (const [w, y] of counts[h]!.entries()) if (x > 0 && y > 0) cost += pairS(model, g, z, h, w);
  }
  return cost + model.fireEndS(atFireEnd);
}

/** Why one more piece of cook g cannot lie in zone z beside what lies there; undefined when it can. */
function hindranceOf(model: PlacementModel, counts: Counts, g: number, z: number): ZoneHindrance | undefined {
  const { problem } = model;
  const [group, zone] = [problem.groups[g]!, problem.zones[z]!];
  if (turnEveryS(problem, group, zone) === 0) return 'scorches';
  if (group.pieceKg > zone.bearsKg) return 'too-heavy';
  for (const [h, other] of counts.entries()) {
    if (h === g) continue;
    for (const [w, y] of other.entries()) if (y > 0 && pairS(model, g, z, h, w) === Infinity) return zone.grate > problem.zones[w]!.grate ? 'drips' : 'dripped-on';
  }
  const left = [...model.rooms];
  for (const [h, other] of counts.entries()) for (const [w, y] of other.entries()) if (y > 0) for (const { room, amount } of model.takes[h]![w]!) left[room]! -= amount * y;
  return model.takes[g]![z]!.some(({ room, amount }) => left[room]! < amount) ? 'full' : undefined;
}

const withPieces = (counts: Counts, g: number, change: (own: Int32Array) => void): Int32Array[] =>
  counts.map((own, h) => {
    const copy = Int32Array.from(own);
    if (h === g) change(copy);
    return copy;
  });

function elsewhereOf(model: PlacementModel, counts: Counts, g: number, z: number): readonly Elsewhere[] {
  const now = costOf(model, counts);
  const lifted = withPieces(counts, g, (own) => void (own[z]! -= 1));
  return model.problem.zones.flatMap((zone, w): Elsewhere[] => {
    if (w === z) return [];
    const hindrance = hindranceOf(model, lifted, g, w);
    if (hindrance) return [{ zoneId: zone.id, hindrance }];
    return [{ zoneId: zone.id, moreS: costOf(model, withPieces(lifted, g, (own) => void (own[w]! += 1))) - now }];
  });
}

function reasonOf(model: PlacementModel, counts: Counts, g: number, z: number, elsewhere: readonly Elsewhere[]): PlacingReason {
  const { problem, price } = model;
  if (elsewhere.every(({ hindrance }) => hindrance !== undefined)) return 'only-place';
  const [group, here] = [problem.groups[g]!, problem.zones[z]!];
  const suffers = (zone: typeof here) => turnEveryS(problem, group, zone) !== undefined;
  if (!suffers(here) && problem.zones.some((zone) => zone.radiantWPerM2 > here.radiantWPerM2 && suffers(zone))) return 'cooler-side';
  const keepsOff = placementParameter(problem, 'fireEndPerHourS') > 0 && counts[g]!.every((pieces, w) => pieces === 0 || !problem.zones[w]!.fireEnd);
  if (keepsOff && problem.zones.some((zone, w) => zone.fireEnd && (price[g]![w] ?? Infinity) < price[g]![z]!)) return 'fire-end-free';
  const off = (zone: typeof here) => Math.abs(zone.airTempC - group.wantedTempC);
  return problem.zones.every((zone) => off(here) <= off(zone)) ? 'right-heat' : 'least-price';
}

/** Each place with why, and what the other zones would cost. */
export function placingsOf(model: PlacementModel, counts: Counts): readonly Placing[] {
  const { groups, zones } = model.problem;
  return groups.flatMap((group, g) => zones.flatMap((zone, z): Placing[] => {
    const pieces = counts[g]![z]!;
    if (pieces === 0) return [];
    const elsewhere = elsewhereOf(model, counts, g, z);
    const turnEvery = turnEveryS(model.problem, group, zone);
    const isTurned = turnEvery !== undefined && turnEvery < group.offAt - group.onAt;
    return [{
      cookId: group.id, zoneId: zone.id, pieces, airTempC: zone.airTempC, radiantWPerM2: zone.radiantWPerM2, offByK: zone.airTempC - group.wantedTempC, comesOffAt: group.offAt,
      ...(isTurned && { turnEveryS: turnEvery }), reason: reasonOf(model, counts, g, z, elsewhere), elsewhere,
    }];
  }));
}

/** What has no place, and for each zone the first rule that forbids it. */
export function unplacedOf(model: PlacementModel, counts: Counts): readonly Unplaced[] {
  const { groups, zones } = model.problem;
  return groups.flatMap((group, g): Unplaced[] => {
    const pieces = group.pieces - counts[g]!.reduce((sum, x) => sum + x, 0);
    if (pieces === 0) return [];
    return [{ cookId: group.id, pieces, hindrances: zones.map((zone, z) => ({ zoneId: zone.id, hindrance: hindranceOf(model, counts, g, z) ?? 'full' })) }];
  });
}
