import { modelOf, type PlacementModel } from './model.js';
import type { PlacementLevels } from './plan.js';
import type { PlacementProblem } from './problem.js';

/** Prices of the rooms, one of the best found; with them each cook can be judged alone. */
export interface RoomPrices {
  /** Per unit of room. */
  readonly perUnit: Float64Array;
  /** Least priced cost of each cook, and of all together less the room that there is: no placement costs less. */
  readonly least: readonly number[];
  readonly bound: number;
}

/**
 * Least cost of placing k pieces of cook g in zones z and later (each zone begun costs the spread price), by z and k.
 * @param perPiece  price of a piece in each zone with what its room costs; Infinity where it has no place
 */
export function tailsOf(model: PlacementModel, g: number, perPiece: readonly number[], most: readonly number[]): readonly Float64Array[] {
  const n = model.pieces[g]!;
  const last = Float64Array.from({ length: n + 1 }, (_, k) => k * model.unplacedS[g]!);
  const tails: Float64Array[] = [last];
  for (let z = model.zones - 1; z >= 0; z--) {
    const after = tails[0]!;
    const here = Float64Array.from(after);
    const price = perPiece[z]!;
    for (let k = 1; k <= n && most[z]! > 0; k++) {
      for (let x = 1; x <= Math.min(k, most[z]!); x++) {
        const cost = model.spreadS + price * x + after[k - x]!;
        if (cost < here[k]!) here[k] = cost;
      }
    }
    tails.unshift(here);
  }
  return tails;
}

/** Price of a piece of cook g in each zone at these room prices. */
export function pricedPieces(model: PlacementModel, g: number, perUnit: Float64Array): readonly number[] {
  return model.price[g]!.map((price, z) => {
    let sum = price ?? Infinity;
    if (price !== undefined) for (const { room, amount } of model.takes[g]![z]!) sum += perUnit[room]! * amount;
    return sum;
  });
}

/** The pieces per zone of the least cost, read back from its tails. */
export function leastColumn(model: PlacementModel, g: number, perPiece: readonly number[], most: readonly number[], tails: readonly Float64Array[]): Int32Array {
  const counts = new Int32Array(model.zones);
  let k = model.pieces[g]!;
  for (let z = 0; z < model.zones; z++) {
    let best = tails[z + 1]![k]!;
    for (let x = 1; x <= Math.min(k, most[z]!); x++) {
      const cost = model.spreadS + perPiece[z]! * x + tails[z + 1]![k - x]!;
      if (cost < best) [best, counts[z]] = [cost, x];
    }
    k -= counts[z]!;
  }
  return counts;
}

const STEPS = 120;
const REPAIR_EVERY = 6;

/**
 * Lagrangian bound: room for sale at a price, each cook placed alone at its least, what the room is worth taken off
 * (A. Geoffrion 1974, from memory). Prices climb by subgradient steps towards what a known placement costs.
 *
 * @param repair  makes a placement that keeps the rules out of room prices and returns its cost, so that steps have an aim
 */
export function roomPrices(model: PlacementModel, repair: (perUnit: Float64Array) => number): RoomPrices {
  const rooms = model.rooms.length;
  const share = new Float64Array(rooms);
  const perUnit = new Float64Array(rooms);
  let best: RoomPrices = { perUnit: Float64Array.from(perUnit), least: [], bound: -Infinity };
  let known = Infinity;
  let stride = 1;
  let idle = 0;
  for (let step = 0; step < STEPS; step++) {
    for (let r = 0; r < rooms; r++) perUnit[r] = model.rooms[r]! > 0 ? share[r]! / model.rooms[r]! : 0;
    if (step % REPAIR_EVERY === 0) known = Math.min(known, repair(perUnit));
    const { least, over, bound } = priced(model, share, perUnit);
    if (bound > best.bound + 1e-9) [best, idle] = [{ perUnit: Float64Array.from(perUnit), least, bound }, 0];
    else if (++idle % 6 === 0) stride /= 2;
    const norm = over.reduce((sum, one, r) => (one < 0 && share[r] === 0 ? sum : sum + one * one), 0);
    if (known - best.bound < 1 - 1e-6 || norm < 1e-12) break;
    const move = (stride * Math.max(1, known - bound)) / norm;
    for (let r = 0; r < rooms; r++) share[r] = Math.max(0, share[r]! + move * over[r]!);
  }
  return best;
}

function priced(model: PlacementModel, share: Float64Array, perUnit: Float64Array) {
  const least: number[] = [];
  const over = new Float64Array(model.rooms.length).fill(-1);
  let bound = 0;
  for (let g = 0; g < model.pieces.length; g++) {
    const perPiece = pricedPieces(model, g, perUnit);
    const tails = tailsOf(model, g, perPiece, model.most[g]!);
    const n = model.pieces[g]!;
    least.push(Math.min(n * model.unplacedS[g]!, tails[0]![n]! - model.spreadS));
    bound += least[g]!;
    for (const [z, x] of leastColumn(model, g, perPiece, model.most[g]!, tails).entries()) {
      if (x > 0) for (const { room, amount } of model.takes[g]![z]!) over[room]! += (x * amount) / model.rooms[room]!;
    }
  }
  for (const one of share) bound -= one;
  return { least, over, bound };
}

/** The bound as levels: unplaced first, price second. */
export function boundLevels(model: PlacementModel, bound: number): PlacementLevels {
  const whole = Math.max(0, Math.ceil(bound - 1e-6));
  return { unplaced: Math.floor(whole / model.strictS), priceS: whole % model.strictS };
}

/** No placement of this problem is better than this. Held to placement/plan-placement.test.ts against every placement of small ones. */
export function placementBound(problem: PlacementProblem): PlacementLevels {
  const model = modelOf(problem);
  const most = model.unplacedS.reduce((sum, one, g) => sum + one * model.pieces[g]!, 0);
  return boundLevels(model, roomPrices(model, () => most).bound);
}
