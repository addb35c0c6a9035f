import type { CookPlanProblem } from './problem.js';
import { tableOf, type Choice, type CookTable } from './table.js';

/** A pit's grate is counted in so many parts, each cook's share rounded down. */
const GRATE_PARTS = 48;

/** A way of a cook at one heat of one pit, and between which steps it keeps the cook in its time. */
interface WellWay {
  readonly choice: Choice;
  readonly low: number;
  readonly high: number;
}
/** A cook as one pit at one heat sees it. */
interface Item {
  readonly cook: number;
  /** Share of the grate: in whole parts, rounded down, and as it is. */
  readonly parts: number;
  readonly share: number;
  readonly ways: readonly WellWay[];
  /** Least that it costs of its own here, and fewest steps that it takes. */
  readonly own: number;
  readonly steps: number;
  /** Cooks that share a moment at which all of them are on, however they are shifted. */
  readonly clique: number;
}

/** Pits that cannot be told apart, at one heat. */
interface Fire {
  readonly kind: number;
  readonly pit: number;
  readonly heat: number;
  readonly items: readonly Item[];
  readonly cliques: number;
  readonly table: CookTable;
}

interface Part {
  readonly cook: number;
  readonly part: number;
}
interface Column {
  readonly reduced: number;
  readonly cooks: readonly Part[];
}

function itemsOf(table: CookTable, pit: number, heat: number): { readonly items: readonly Item[]; readonly cliques: number } {
  const found = table.choices.flatMap((ofPit, cook) => {
    const well = ofPit[pit]!.filter((choice) => choice.heat === heat).flatMap((choice) => wellOf(table, choice) ?? []);
    if (well.length === 0) return [];
    const core = [Math.max(...well.map(({ high }) => high)), Math.min(...well.map(({ low, choice }) => low + choice.steps))] as const;
    const share = table.problem.cooks[cook]!.areaM2 / table.problem.pits[pit]!.areaM2;
    const own = Math.min(...well.map(({ choice, high }) => table.ownCents(choice, high)));
    return [{ cook, parts: Math.floor(share * GRATE_PARTS + 1e-9), share, own, core, steps: Math.min(...well.map(({ choice }) => choice.steps)), ways: well }];
  });
  const cliques: number[] = [];
  const items = [...found].sort((a, b) => a.core[1] - b.core[1] || a.cook - b.cook).map(({ core, ...item }): Item => {
    if (core[0] >= core[1]) return { ...item, clique: cliques.push(NaN) - 1 };
    const at = cliques.findIndex((moment) => core[0] <= moment && moment < core[1]);
    return { ...item, clique: at >= 0 ? at : cliques.push(core[1] - 1) - 1 };
  });
  return { items, cliques: cliques.length };
}

/** Between which steps a choice keeps a cook in its time; a fixed one keeps its own. */
function wellOf(table: CookTable, choice: Choice): WellWay | undefined {
  const fixed = table.problem.cooks[choice.cook]!.fixed !== undefined;
  const [low, high] = fixed ? [choice.first, choice.last] : [Math.max(choice.low, choice.first), Math.min(choice.high, choice.last)];
  return low <= high ? { choice, low, high } : undefined;
}

function firesOf(table: CookTable): readonly Fire[] {
  const { pits } = table.problem;
  const kinds = new Map<string, number>();
  return pits.flatMap((pit, p) => {
    const { id: _id, ...alike } = pit;
    const named = JSON.stringify([alike, table.choices.map((ofPit) => ofPit[p]!.map(({ way, first, last }) => [way, first, last]))]);
    const kind = kinds.get(named) ?? p;
    kinds.set(named, kind);
    return pit.heats.map((_, heat): Fire => ({ kind, pit: p, heat, ...(kind === p ? itemsOf(table, p, heat) : { items: [], cliques: 0 }), table }));
  });
}

/** The earliest step by which a window that begins at `start` can hold this cook; Infinity when it cannot. */
function endOf({ ways }: Item, start: number): number {
  let end = Infinity;
  for (const { choice: { steps }, low, high } of ways) if (high >= start) end = Math.min(end, Math.max(low, start) + steps);
  return end;
}

interface Useful {
  readonly item: Item;
  readonly worth: number;
  /** Most that it can bring in any window. */
  readonly profit: number;
}
interface Window extends Column {
  readonly start: number;
  readonly end: number;
}

/** A pit that is not lit. */
const COLD: Window = { start: 0, end: 0, reduced: 0, cooks: [] };

/**
 * The least that one fire can cost less what its cooks are worth, over every window. Cooks come in by the end that they need.
 * Two relaxations, and the tighter counts: in each clique a knapsack of the grate; or grate and time together, with parts of cooks.
 */
function cheapestColumn(fire: Fire, worth: Float64Array, known: Window, before: Window | undefined): Window {
  const useful = fire.items.map((item): Useful => ({ item, worth: worth[item.cook]!, profit: worth[item.cook]! - item.own })).filter(({ profit }) => profit > 0)
    .sort((a, b) => b.profit / (b.item.share * b.item.steps) - a.profit / (a.item.share * a.item.steps));
  const starts = [...new Set(useful.flatMap(({ item }) => item.ways.flatMap(({ low, high }) => Array.from({ length: high - low + 1 }, (_, i) => low + i))))].sort((a, b) => a - b);
  let best = known;
  if (before) best = closeWindow(fire, useful, best, before.start, before.end);
  for (const start of starts) best = cheapestFrom(fire, useful, start, best);
  return best;
}

/** Windows from one start: a loose look at each end first, a close one where that does not settle it. */
function cheapestFrom(fire: Fire, useful: readonly Useful[], start: number, known: Window): Window {
  const filled = Array.from({ length: fire.cliques }, () => new Float64Array(GRATE_PARTS + 1));
  const ends = useful.map(({ item }) => endOf(item, start));
  const coming = useful.map((_, i) => i).filter((i) => ends[i]! < Infinity).sort((a, b) => ends[a]! - ends[b]!);
  const last = Math.max(0, ...useful.flatMap(({ item }) => item.ways.map(({ choice, high }) => high + choice.steps)));
  let best = known;
  let gain = 0;
  let at = 0;
  for (let end = ends[coming[0]!] ?? Infinity; end <= last; end++) {
    for (; at < coming.length && ends[coming[at]!]! <= end; at++) {
      const { item, profit } = useful[coming[at]!]!;
      const fill = filled[item.clique]!;
      gain -= fill[GRATE_PARTS]!;
      for (let room = GRATE_PARTS; room >= item.parts; room--) if (fill[room - item.parts]! + profit > fill[room]!) fill[room] = fill[room - item.parts]! + profit;
      gain += fill[GRATE_PARTS]!;
    }
    const burn = fire.table.burnCents(fire.pit, fire.heat, start, end);
    if (burn - gain >= best.reduced || burn - gainByGrateTime(useful, ends, end, end - start) >= best.reduced) continue;
    best = closeWindow(fire, useful, best, start, end);
  }
  return best;
}

/** Most that cooks can be worth when parts of them may lie on the grate, densest first, in grate x time. */
function gainByGrateTime(useful: readonly Useful[], ends: readonly number[], end: number, lengthSteps: number): number {
  let [room, gain] = [lengthSteps, 0];
  for (let i = 0; i < useful.length; i++) {
    if (ends[i]! > end) continue;
    const { item, profit } = useful[i]!;
    const takes = item.share * item.steps;
    if (takes >= room) return gain + (profit * room) / takes;
    room -= takes;
    gain += profit;
  }
  return gain;
}

/** One way in a window: what it brings, kept as short as the window lets, and the grate x time that it takes. */
interface Bring {
  readonly profit: number;
  readonly takes: number;
}

function bringsOf(fire: Fire, { item, worth }: Useful, start: number, end: number): readonly Bring[] {
  const found: Bring[] = [];
  for (const { choice, low, high } of item.ways) {
    const on = Math.min(high, end - choice.steps);
    if (on < Math.max(low, start)) continue;
    const profit = worth - fire.table.ownCents(choice, on);
    if (profit > 0) found.push({ profit, takes: item.share * choice.steps });
  }
  return found;
}

/** Both relaxations of a window with every way at its own price there, the tighter counts; `known` when it is no better. */
function closeWindow(fire: Fire, useful: readonly Useful[], known: Window, start: number, end: number): Window {
  const burn = fire.table.burnCents(fire.pit, fire.heat, start, end);
  const there: { item: Item; brings: readonly Bring[] }[] = [];
  for (const one of useful) {
    const brings = bringsOf(fire, one, start, end);
    if (brings.length > 0) there.push({ item: one.item, brings });
  }
  const byGrate = grateTimeWindow(there, end - start);
  if (burn + byGrate.reduced >= known.reduced) return known;
  const cliqueGain = gainByClique(fire, there);
  const reduced = burn + Math.max(byGrate.reduced, -cliqueGain);
  if (reduced >= known.reduced) return known;
  return { start, end, reduced, cooks: byGrate.reduced > -cliqueGain ? byGrate.cooks : cliqueWindow(fire, there).cooks };
}

const scratch = new Float64Array(GRATE_PARTS + 1);

function gainByClique(fire: Fire, there: There): number {
  let gain = 0;
  for (let clique = 0; clique < fire.cliques; clique++) {
    scratch.fill(0);
    for (const { item, brings } of there) {
      if (item.clique !== clique) continue;
      let profit = 0;
      for (const bring of brings) profit = Math.max(profit, bring.profit);
      for (let room = GRATE_PARTS; room >= item.parts; room--) if (scratch[room - item.parts]! + profit > scratch[room]!) scratch[room] = scratch[room - item.parts]! + profit;
    }
    gain += scratch[GRATE_PARTS]!;
  }
  return gain;
}

type There = readonly { readonly item: Item; readonly brings: readonly Bring[] }[];

/** Ways of a cook as first step and dearer steps after it, each less dense than the one before (upper hull). */
function hullOf(brings: readonly Bring[]): readonly Bring[] {
  if (brings.length === 1) return brings;
  const steps: Bring[] = [];
  let [profit, takes] = [0, 0];
  const sorted = [...brings].sort((a, b) => a.takes - b.takes || b.profit - a.profit);
  for (;;) {
    const next = sorted.filter((one) => one.profit > profit && one.takes > takes).sort((a, b) => (b.profit - profit) / (b.takes - takes) - (a.profit - profit) / (a.takes - takes))[0];
    if (!next) return steps;
    steps.push({ profit: next.profit - profit, takes: next.takes - takes });
    [profit, takes] = [next.profit, next.takes];
  }
}

function grateTimeWindow(there: There, lengthSteps: number): Column {
  const steps = there.flatMap(({ item, brings }) => hullOf(brings).map((one, i) => ({ cook: item.cook, first: i === 0, ...one }))).sort((a, b) => b.profit / b.takes - a.profit / a.takes);
  let [room, gain] = [lengthSteps, 0];
  const cooks: Part[] = [];
  for (const { cook, first, profit, takes } of steps) {
    const part = Math.min(1, room / takes);
    gain += profit * part;
    if (first) cooks.push({ cook, part });
    room -= takes * part;
    if (room <= 1e-9) break;
  }
  return { reduced: -gain, cooks };
}

function cliqueWindow(fire: Fire, there: There): Column {
  let gain = 0;
  const cooks: Part[] = [];
  for (let clique = 0; clique < fire.cliques; clique++) {
    const own = there.filter(({ item }) => item.clique === clique).map(({ item, brings }) => ({ item, profit: Math.max(...brings.map(({ profit }) => profit)) }));
    const rows: Float64Array[] = [new Float64Array(GRATE_PARTS + 1)];
    for (const { item, profit } of own) {
      const before = rows[rows.length - 1]!;
      const after = Float64Array.from(before);
      for (let room = item.parts; room <= GRATE_PARTS; room++) after[room] = Math.max(before[room]!, before[room - item.parts]! + profit);
      rows.push(after);
    }
    gain += rows[own.length]![GRATE_PARTS]!;
    for (let i = own.length, room = GRATE_PARTS; i > 0; i--) {
      if (rows[i]![room] === rows[i - 1]![room]) continue;
      cooks.push({ cook: own[i - 1]!.item.cook, part: 1 });
      room -= own[i - 1]!.item.parts;
    }
  }
  return { reduced: -gain, cooks };
}

/** A first price for each cook: the known cost by grate and time. */
function sharesOf(table: CookTable, knownCents: number): Float64Array {
  const takes = table.problem.cooks.map(({ areaM2 }, c) => areaM2 * Math.min(...table.choices[c]!.flat().map(({ steps }) => steps), 1e6));
  const all = takes.reduce((sum, one) => sum + one, 0);
  return Float64Array.from(takes, (one) => (knownCents * one) / Math.max(all, 1e-9));
}

/**
 * Lagrangian bound: every cook is worth a price, each pit takes what pays for its fire, or stays cold
 * (A. Geoffrion 1974, from memory); prices climb by subgradient steps towards the cost of a known plan.
 */
export function boundCents(table: CookTable, knownCents: number, steps = 40): number {
  const fires = firesOf(table);
  const cooks = table.problem.cooks.length;
  const worth = sharesOf(table, knownCents);
  const placeable = table.choices.map((ofPit) => ofPit.some((choices) => choices.some((choice) => wellOf(table, choice) !== undefined)));
  if (placeable.some((can) => !can)) return 0;
  let best = 0;
  let stride = 1;
  let idle = 0;
  const before = new Map<Fire, Window>();
  for (let step = 0; step < steps && knownCents - best >= 1; step++) {
    const cheapest = new Map<number, Window>();
    for (const fire of fires) {
      if (fire.kind !== fire.pit) continue;
      const known = cheapest.get(fire.kind) ?? COLD;
      const window = cheapestColumn(fire, worth, known, before.get(fire));
      cheapest.set(fire.kind, window);
      if (window !== known) before.set(fire, window);
    }
    const slack = new Float64Array(cooks).fill(1);
    let bound = worth.reduce((sum, one) => sum + one, 0);
    for (const kind of new Map(fires.map(({ pit, kind: of }) => [pit, of])).values()) {
      const column = cheapest.get(kind)!;
      bound += column.reduced;
      for (const { cook, part } of column.cooks) slack[cook]! -= part;
    }
    if (bound > best + 1e-6) [best, idle] = [bound, 0];
    else if (++idle % 8 === 0) stride *= 0.7;
    const norm = slack.reduce((sum, one) => sum + one * one, 0);
    if (norm === 0) break;
    const move = (stride * Math.max(1, knownCents - bound)) / norm;
    for (let cook = 0; cook < cooks; cook++) worth[cook] = Math.max(0, worth[cook]! + move * slack[cook]!);
  }
  return Math.max(0, Math.ceil(best - 1e-6));
}

/** No plan that places every cook in its time costs less, cents. Held to cook-plan/plan-cooks.test.ts against every plan of small problems. */
export function cookPlanBound(problem: CookPlanProblem, knownCents: number): number {
  return boundCents(tableOf(problem), knownCents);
}
