import { loadsOf, type LoadWant } from './loads.js';
import { parameter, type PullLot, type PullProblem, type WoodPile } from './problem.js';

/** One pile that may go on one load, with what a split of it is worth there. */
export interface Cell {
  readonly load: number;
  readonly pile: number;
  readonly heatJ: number;
  /** What a split takes of the cart's load; offcuts are carried beside it. */
  readonly massKg: number;
  /** Price, trimming, way, wetness, age, and the change of a promise; mills. Wood on the pit's own cart has been drawn already: it has no price and no way. */
  readonly mills: number;
  /** Price, trimming and way alone. */
  readonly woodMills: number;
  readonly wetPoints: number;
  readonly isOffcut: boolean;
  readonly isChange: boolean;
  readonly way: 'as-is' | 'trimmed';
  readonly cuts: number;
  readonly offcuts: number;
}

/** The problem as numbers: loads, cells, and which cells a load has. */
export interface PullModel {
  readonly problem: PullProblem;
  readonly loads: readonly LoadWant[];
  readonly cells: readonly Cell[];
  readonly cellsOfLoad: readonly (readonly number[])[];
  /** Cell of a load and a pile, -1 if it may not go there. */
  readonly cellAt: (load: number, pile: number) => number;
  readonly loadsOfPit: readonly (readonly number[])[];
  readonly needOfPitJ: readonly number[];
  /** For each load and wish: whether a cell is of its species. */
  readonly isOfShare: (load: number, share: number, cell: number) => boolean;
}

/** Every pile on every load where fit, dryness and offcuts allow it. */
export function modelOf(problem: PullProblem): PullModel {
  const loads = loadsOf(problem);
  const lots = new Map(problem.lots.map((lot) => [lot.id, lot]));
  const ways = new Map(problem.ways.map((way) => [`${way.pitId} ${way.lotId}`, way]));
  const cells: Cell[] = [];
  const at = new Int32Array(loads.length * problem.piles.length).fill(-1);
  loads.forEach((load, i) =>
    problem.piles.forEach((pile, j) => {
      const lot = lots.get(pile.lotId);
      const way = ways.get(`${load.pitId} ${pile.lotId}`);
      const cell = lot && way && pile.pieces > 0 ? cellOf(problem, { load, i, pile, j, lot, way }) : undefined;
      if (!cell) return;
      at[i * problem.piles.length + j] = cells.length;
      cells.push(cell);
    }),
  );
  const cellsOfLoad = loads.map((_, i) => cells.flatMap((cell, c) => (cell.load === i ? [c] : [])));
  const ofShare = loads.map((load) => load.shares.map(({ species }) => problem.piles.map((pile) => species.includes(lots.get(pile.lotId)?.species ?? ''))));
  return {
    problem, loads, cells, cellsOfLoad,
    cellAt: (load, pile) => at[load * problem.piles.length + pile]!,
    loadsOfPit: problem.pits.map((_, p) => loads.flatMap((load, i) => (load.pit === p ? [i] : []))),
    needOfPitJ: problem.pits.map(({ hours }) => Math.max(1, hours.reduce((sum, { needJ }) => sum + needJ, 0))),
    isOfShare: (load, share, cell) => ofShare[load]![share]![cells[cell]!.pile]!,
  };
}

interface CellPlace {
  readonly load: LoadWant;
  readonly i: number;
  readonly pile: WoodPile;
  readonly j: number;
  readonly lot: PullLot;
  readonly way: PullProblem['ways'][number];
}

function cellOf(problem: PullProblem, { load, i, pile, j, lot, way }: CellPlace): Cell | undefined {
  if (lot.offcut && load.offcutJ <= 0) return undefined;
  // What lies on the pit's own cart is burned first; what is left of it counts for the hours after.
  if (pile.cartOf === load.pitId && load.nth > 0) return undefined;
  const asIs = way.asIs && (way.asIs.lies === 'across' || !load.across) ? way.asIs : undefined;
  const trimmed = asIs ? undefined : way.trimmed;
  const heatJ = (asIs ?? trimmed)?.heatJ;
  if (heatJ === undefined || heatJ <= 0) return undefined;
  const told = problem.promises.filter(({ pitId }) => pitId === load.pitId);
  const isChange = told.length > 0 && !told.some(({ lotId }) => lotId === lot.id);
  const isHere = pile.cartOf === load.pitId;
  const isOffcut = lot.offcut ?? false;
  const woodMills = (isHere ? 0 : lot.priceMills) + (trimmed?.trimMills ?? 0) + (isOffcut ? 0 : wayMills(problem, load, pile));
  return {
    load: i, pile: j, heatJ, massKg: isOffcut ? 0 : lot.pieceKg, woodMills, wetPoints: lot.wetPoints, isOffcut, isChange,
    mills: woodMills + (isHere ? 0 : lot.laterMills) + parameter(problem, 'wetMills') * lot.wetPoints + (isChange ? parameter(problem, 'changeMills') : 0),
    way: trimmed ? 'trimmed' : 'as-is', cuts: trimmed?.cuts ?? 0, offcuts: trimmed?.offcuts ?? 0,
  };
}

/** What it costs to bring one split of a pile to a pit, whole mills; nothing for what lies on its own cart. */
function wayMills(problem: PullProblem, load: LoadWant, pile: WoodPile): number {
  if (pile.cartOf === load.pitId) return 0;
  const pit = problem.pits[load.pit]!;
  const walkS = problem.walkS[problem.places.indexOf(pile.place)]![problem.places.indexOf(pit.place)]!;
  return Math.round(parameter(problem, 'walkMillsPerS') * ((2 * walkS) / parameter(problem, 'piecesPerWay') + parameter(problem, 'handlingS')));
}
