import { later, type EpochS } from '@stokehold/domain/quantity';
import { turnEveryS } from './model.js';
import type { FireEndFree, Handling } from './plan.js';
import type { PlacementGroup, PlacementProblem, PlacementZone } from './problem.js';

/** Air and radiation together warm a side at about this rate, W/m2K: gentle draught and grey walls (8 + 9). Source: our reading of [INCROPERA-5], from memory. */
const FILM_W_PER_M2K = 17;
/** Zones this far apart in heat do not need their pieces swapped, K. Source: common practice, no source. */
const ALIKE_K = 4;

const heatC = (zone: PlacementZone) => zone.airTempC + zone.radiantWPerM2 / 2 / FILM_W_PER_M2K;

type Laid = readonly (readonly [PlacementZone, number])[];

/** What has to be turned and swapped, in order of time. */
export function handlingsOf(problem: PlacementProblem, counts: readonly Int32Array[]): readonly Handling[] {
  const found = problem.groups.flatMap((group, g) => {
    const laid: Laid = problem.zones.flatMap((zone, z) => (counts[g]![z]! > 0 ? [[zone, counts[g]![z]!] as const] : []));
    return [...laid.flatMap(([zone, pieces]) => turns(problem, group, zone, pieces)), ...swaps(group, laid)];
  });
  return found.sort((a, b) => a.at - b.at || a.kind.localeCompare(b.kind) || a.cookId.localeCompare(b.cookId) || a.zoneId.localeCompare(b.zoneId));
}

function turns(problem: PlacementProblem, group: PlacementGroup, zone: PlacementZone, pieces: number): readonly Handling[] {
  const every = turnEveryS(problem, group, zone);
  if (every === undefined || every === 0) return [];
  return Array.from({ length: Math.ceil((group.offAt - group.onAt) / every) - 1 }, (_, i): Handling => ({ kind: 'turn', at: later(group.onAt, every * (i + 1)), cookId: group.id, zoneId: zone.id, pieces }));
}

/** Half way through, the hottest pieces of a cook change places with its coolest: all then get about the same heat. */
function swaps(group: PlacementGroup, laid: Laid): readonly Handling[] {
  const byHeat = laid.map(([zone, pieces]) => ({ zone, left: pieces })).sort((a, b) => heatC(b.zone) - heatC(a.zone));
  const at = later(group.onAt, (group.offAt - group.onAt) / 2);
  const found: Handling[] = [];
  for (let hot = 0, cool = byHeat.length - 1; hot < cool; ) {
    const [from, to] = [byHeat[hot]!, byHeat[cool]!];
    if (heatC(from.zone) - heatC(to.zone) < ALIKE_K) break;
    const pieces = Math.min(from.left, to.left);
    found.push({ kind: 'swap', at, cookId: group.id, zoneId: from.zone.id, withZoneId: to.zone.id, pieces });
    from.left -= pieces;
    to.left -= pieces;
    if (from.left === 0) hot += 1;
    if (to.left === 0) cool -= 1;
  }
  return found;
}

/** When nothing lies at the fire end, from the first cook on until the last off. */
export function fireEndFreeOf({ zones, groups }: PlacementProblem, counts: readonly Int32Array[]): readonly FireEndFree[] {
  const laid = groups.filter((_, g) => counts[g]!.some((x) => x > 0));
  if (laid.length === 0) return [];
  const taken = groups.filter((_, g) => zones.some(({ fireEnd }, z) => fireEnd && counts[g]![z]! > 0)).sort((a, b) => a.onAt - b.onAt);
  const found: FireEndFree[] = [];
  let from = Math.min(...laid.map(({ onAt }) => onAt)) as EpochS;
  for (const { onAt, offAt } of taken) {
    if (onAt > from) found.push({ from, until: onAt });
    if (offAt > from) from = offAt;
  }
  const until = Math.max(...laid.map(({ offAt }) => offAt)) as EpochS;
  return until > from ? [...found, { from, until }] : found;
}
