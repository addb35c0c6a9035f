import { leastColumn, pricedPieces, roomPrices, tailsOf, type RoomPrices } from './bound.js';
import { pairS, type PlacementModel } from './model.js';

/** Pieces by cook and zone. */
export type Counts = readonly Int32Array[];

export interface Found {
  readonly counts: Counts;
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
}

/** Ways to lay one cook, and steps of the search, at most; beyond, the best so far is not proven. */
const MOST_COLUMNS = 8000;
const MOST_STEPS = 100_000;
const MOST_ROUNDS = 6;

interface Column {
  readonly counts: Int32Array;
  /** Cost of its own, without room. */
  readonly own: number;
  /** The same with the room it takes, at the room prices. */
  readonly priced: number;
}

/** What a cook costs in itself: pieces, spread, pieces without a place. */
export function ownCost(model: PlacementModel, g: number, counts: Int32Array): number {
  let placed = 0;
  let used = 0;
  let cost = 0;
  for (let z = 0; z < model.zones; z++) {
    const x = counts[z]!;
    if (x === 0) continue;
    placed += x;
    used += 1;
    cost += x * model.price[g]![z]!;
  }
  return cost + model.spreadS * Math.max(0, used - 1) + (model.pieces[g]! - placed) * model.unplacedS[g]!;
}

/** Price between a cook's column and those before it; Infinity where something would drip on something. */
function betweenS(model: PlacementModel, g: number, counts: Int32Array, before: readonly (Int32Array | undefined)[]): number {
  const { zones, pairs, pieces } = model;
  let sum = 0;
  for (let h = 0; h < before.length; h++) {
    const other = before[h];
    if (!other || h === g) continue;
    const base = (g * pieces.length + h) * zones * zones;
    for (let z = 0; z < zones; z++) {
      if (counts[z] === 0) continue;
      for (let w = 0; w < zones; w++) if (other[w]! > 0) sum += pairs[base + z * zones + w]!;
    }
  }
  return sum;
}

function usesFireEnd(model: PlacementModel, counts: Int32Array): boolean {
  for (const z of model.fireEndZones) if (counts[z]! > 0) return true;
  return false;
}

interface Laid {
  readonly counts: Int32Array[];
  readonly cost: number;
}

/** A placement that keeps every rule: what lies stays, the cooks of `order` follow, each at its least cost in the room that is left. */
function layAfter(model: PlacementModel, lying: Counts, order: readonly number[], perUnit: Float64Array): Laid {
  const rooms = [...model.rooms];
  const counts: (Int32Array | undefined)[] = lying.map((own, g) => (order.includes(g) ? undefined : own));
  let cost = 0;
  let atFireEnd = 0;
  const count = (g: number, own: Int32Array, before: readonly (Int32Array | undefined)[]) => {
    cost += ownCost(model, g, own) + betweenS(model, g, own, before);
    if (usesFireEnd(model, own)) atFireEnd |= 1 << g;
    take(model, g, own, rooms, 1);
  };
  for (const [g, own] of counts.entries()) if (own) count(g, own, counts.slice(0, g));
  for (const g of order) {
    const perPiece = pricedPieces(model, g, perUnit);
    const most = model.most[g]!.map((limit, z) => {
      const drips = counts.some((other, h) => other?.some((x, w) => x > 0 && pairS(model, g, z, h, w) === Infinity));
      return drips ? 0 : model.takes[g]![z]!.reduce((least, { room, amount }) => Math.min(least, Math.floor(rooms[room]! / amount)), limit);
    });
    const column = leastColumn(model, g, perPiece, most, tailsOf(model, g, perPiece, most));
    keepWholePit(model, g, column, rooms);
    count(g, column, counts);
    counts[g] = column;
  }
  return { counts: counts as Int32Array[], cost: cost + model.fireEndS(atFireEnd) };
}

/** One or two cooks at a time are lifted and laid again, as long as it helps. */
function improve(model: PlacementModel, start: Laid, prices: readonly Float64Array[]): Laid {
  let best = start;
  const cooks = model.pieces.map((_, g) => g);
  const lifts = cooks.flatMap((g) => [[g], ...cooks.filter((h) => h !== g).map((h) => [g, h])]);
  for (let round = 0, better = true; better && round < MOST_ROUNDS; round++) {
    better = false;
    for (const lift of lifts) for (const perUnit of prices) {
      const found = layAfter(model, best.counts, lift, perUnit);
      if (found.cost < best.cost) [best, better] = [found, true];
    }
  }
  return best;
}

/** Zones together may ask more of the pit's weight than it bears: the last zones give back. */
function keepWholePit(model: PlacementModel, g: number, column: Int32Array, rooms: number[]): void {
  for (let z = model.zones - 1; z >= 0; z--) while (column[z]! > 0 && !fits(model, g, column, rooms)) column[z]! -= 1;
}

function fits(model: PlacementModel, g: number, counts: Int32Array, rooms: number[]): boolean {
  take(model, g, counts, rooms, 1);
  let fit = true;
  for (let z = 0; z < model.zones && fit; z++) if (counts[z]! > 0) for (const { room } of model.takes[g]![z]!) if (rooms[room]! < 0) fit = false;
  take(model, g, counts, rooms, -1);
  return fit;
}

function take(model: PlacementModel, g: number, counts: Int32Array, rooms: number[], sign: 1 | -1): void {
  for (let z = 0; z < model.zones; z++) {
    const x = counts[z]! * sign;
    if (x === 0) continue;
    for (const { room, amount } of model.takes[g]![z]!) rooms[room]! -= amount * x;
  }
}

/** Every way to lay cook g whose priced cost is within `gap` of its least, cheapest first; undefined when there are too many. */
function columnsOf(model: PlacementModel, g: number, { perUnit, least }: RoomPrices, gap: number): readonly Column[] | undefined {
  const perPiece = pricedPieces(model, g, perUnit);
  const most = model.most[g]!;
  const tails = tailsOf(model, g, perPiece, most);
  const limit = least[g]! + gap + 1e-6;
  const found: Column[] = [];
  const counts = new Int32Array(model.zones);
  const lay = (z: number, left: number, cost: number): boolean => {
    if (found.length > MOST_COLUMNS) return false;
    if (cost + tails[z]![left]! - model.spreadS > limit) return true;
    if (z === model.zones) {
      const own = ownCost(model, g, counts);
      const priced = counts.reduce((sum, x, zone) => (x > 0 ? sum + x * (perPiece[zone]! - model.price[g]![zone]!) : sum), own);
      if (priced <= limit) found.push({ counts: Int32Array.from(counts), own, priced });
      return true;
    }
    for (let x = Math.min(left, most[z]!); x >= 0; x--) {
      counts[z] = x;
      if (!lay(z + 1, left - x, x > 0 ? cost + model.spreadS + perPiece[z]! * x : cost)) return false;
    }
    counts[z] = 0;
    return true;
  };
  if (!lay(0, model.pieces[g]!, 0)) return undefined;
  return found.sort((a, b) => a.priced - b.priced);
}

/** Cooks in several orders: heaviest need first, then as they come, then last off first. */
function orders(model: PlacementModel): readonly (readonly number[])[] {
  const { groups } = model.problem;
  const all = groups.map((_, g) => g);
  const by = (need: (g: number) => number) => [...all].sort((a, b) => need(b) - need(a) || a - b);
  return [by((g) => groups[g]!.pieces * groups[g]!.pieceAreaM2), all, by((g) => groups[g]!.offAt), by((g) => -groups[g]!.bearsWPerM2), by((g) => groups[g]!.dripRank)];
}

/**
 * The best placement, by room prices, then every combination of columns that they leave open (branch and bound).
 * Proven unless there were too many columns or steps.
 */
export function searchPlacement(model: PlacementModel): Found {
  const none = model.pieces.map(() => new Int32Array(model.zones));
  let best: Laid = { counts: none, cost: model.unplacedS.reduce((sum, one, g) => sum + one * model.pieces[g]!, 0) };
  const free = new Float64Array(model.rooms.length);
  const ways = orders(model);
  const repair = (perUnit: Float64Array) => {
    for (const order of ways) {
      const found = layAfter(model, none, order, perUnit);
      if (found.cost < best.cost) best = found;
    }
    return best.cost;
  };
  const prices = roomPrices(model, repair);
  best = improve(model, best, [free, prices.perUnit]);
  const gap = best.cost - prices.bound;
  if (gap < 1 - 1e-6) return { ...best, bound: prices.bound, proven: true };
  const columns = model.pieces.map((_, g) => narrowed(model, g, prices, gap));
  const searched = branch(model, prices, columns.map(({ columns: own }) => own), best);
  const proven = searched.proven && columns.every(({ complete }) => complete);
  return { ...searched, proven, bound: proven ? searched.cost : prices.bound };
}

/** The columns within the gap, or, when they are too many, within as much of it as can be looked through. */
function narrowed(model: PlacementModel, g: number, prices: RoomPrices, gap: number): { readonly columns: readonly Column[]; readonly complete: boolean } {
  for (let within = gap; ; within /= 3) {
    const columns = columnsOf(model, g, prices, within);
    if (columns) return { columns, complete: within === gap };
    if (within < 1) return { columns: [], complete: false };
  }
}

function branch(model: PlacementModel, prices: RoomPrices, columns: readonly (readonly Column[])[], start: Laid): Laid & { readonly proven: boolean } {
  let { counts: best, cost: bestCost } = start;
  const order = columns.map((_, g) => g).sort((a, b) => columns[a]!.length - columns[b]!.length || a - b);
  const after = order.map((_, i) => order.slice(i + 1).reduce((sum, g) => sum + prices.least[g]!, 0));
  const chosen: (Int32Array | undefined)[] = columns.map(() => undefined);
  const rooms = [...model.rooms];
  let worth = rooms.reduce((sum, room, r) => sum + room * prices.perUnit[r]!, 0);
  let steps = 0;
  const lay = (i: number, cost: number, atFireEnd: number): void => {
    if (i === order.length) {
      if (cost + model.fireEndS(atFireEnd) < bestCost) [best, bestCost] = [chosen.map((one) => one!), cost + model.fireEndS(atFireEnd)];
      return;
    }
    const g = order[i]!;
    for (const column of columns[g]!) {
      if (steps > MOST_STEPS) return;
      if (cost + column.priced + after[i]! - worth + model.fireEndS(atFireEnd) > bestCost - 1 + 1e-6) break;
      steps += 1;
      const between = betweenS(model, g, column.counts, chosen);
      const fire = usesFireEnd(model, column.counts) ? atFireEnd | (1 << g) : atFireEnd;
      if (cost + between + column.priced + after[i]! - worth + model.fireEndS(fire) > bestCost - 1 + 1e-6 || !fits(model, g, column.counts, rooms)) continue;
      chosen[g] = column.counts;
      const room = column.priced - column.own;
      take(model, g, column.counts, rooms, 1);
      worth -= room;
      lay(i + 1, cost + column.own + between, fire);
      worth += room;
      take(model, g, column.counts, rooms, -1);
      chosen[g] = undefined;
    }
  };
  lay(0, 0, 0);
  return { counts: best, cost: bestCost, proven: steps <= MOST_STEPS };
}
