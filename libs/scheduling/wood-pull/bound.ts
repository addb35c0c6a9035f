import type { PullModel } from './cells.js';
import { leastCost, type Linear } from './simplex.js';
import { parameter } from './problem.js';

const MJ = 1e6;
/** Rows that begin at zero are moved this little, so that the method does not stand still; the bound uses the true ones. */
const NUDGE = 1e-4;
const NO_LIMIT = 1e12;

/** The night as if splits could be halved: what nobody can beat, and where each split would then go. */
export interface PullBound {
  readonly boundMills: number;
  /** Splits per cell, broken ones too. */
  readonly pieces: Float64Array;
  /** What one more split in a cell would cost beyond what it is worth, mills; by cell. */
  readonly reducedMills: Float64Array;
}

/**
 * A bound on every plan: the linear relaxation of the pull, solved by the simplex method, and from its row prices y the bound
 *
 *     L(y) = y b + sum over columns of min(0, c - y A) u          (weak duality: it holds for any y of the right sign)
 *
 * rounded up to a whole mill. It does not lean on the simplex having been exact. Held to wood-pull.test.ts against a general library.
 */
export function boundOf(model: PullModel): PullBound {
  const build = new Builder();
  const ends = model.loads.map((load, i) => coverRow(build, model, i, load.needSoFarJ + load.reserveJ));
  const carts = model.loads.map(({ cartKg }) => build.atMost(cartKg));
  const offcuts = model.loads.map(({ offcutJ }) => build.atMost(offcutJ / MJ));
  const shares = model.loads.map((load, i) => load.shares.map(() => shareRows(build, model, i)));
  const fair = fairRows(build, model);
  const stock = model.problem.piles.map(({ pieces }) => build.atMost(pieces));
  const first = build.columns;
  model.cells.forEach((cell, c) => {
    const load = model.loads[cell.load]!;
    const heat = cell.heatJ / MJ;
    const entries: [number, number][] = [[stock[cell.pile]!, 1], [carts[cell.load]!, cell.massKg]];
    for (const later of model.loadsOfPit[load.pit]!) if (later >= cell.load) entries.push([ends[later]!, heat]);
    if (cell.isOffcut) entries.push([offcuts[cell.load]!, heat]);
    if (cell.wetPoints > 0) entries.push([fair[load.pit]!, (cell.wetPoints * cell.heatJ) / model.needOfPitJ[load.pit]!]);
    load.shares.forEach(({ leastFrac, mostFrac }, s) => {
      const own = model.isOfShare(cell.load, s, c) ? 1 : 0;
      const [least, most] = shares[cell.load]![s]!;
      entries.push([least, (leastFrac - own) * heat], [most, (own - mostFrac) * heat]);
    });
    build.column(cell.mills, model.problem.piles[cell.pile]!.pieces, entries);
  });
  return answer(build, first, model.cells.length);
}

function coverRow(build: Builder, { loads, problem }: PullModel, i: number, wantedJ: number): number {
  const row = build.row(wantedJ / MJ);
  build.begin(row, build.column(parameter(problem, 'shortMillsPerMj'), NO_LIMIT, [[row, 1]]));
  build.column(parameter(problem, 'reserveMillsPerMj'), loads[i]!.reserveJ / MJ, [[row, 1]]);
  build.column(0, NO_LIMIT, [[row, -1]]);
  build.sign(row, 1);
  return row;
}

function shareRows(build: Builder, { problem }: PullModel, _load: number): readonly [number, number] {
  const rows = [build.atMost(0), build.atMost(0)] as const;
  for (const row of rows) build.column(parameter(problem, 'mixMillsPerMj'), NO_LIMIT, [[row, -1]]);
  return rows;
}

function fairRows(build: Builder, { problem }: PullModel): readonly number[] {
  const rows = problem.pits.map(() => build.atMost(0));
  build.column(parameter(problem, 'fairMills'), NO_LIMIT, rows.map((row) => [row, -1]));
  return rows;
}

function answer(build: Builder, first: number, count: number): PullBound {
  const linear = build.linear();
  const { x, price } = leastCost(linear);
  const clean = price.map((y, row) => (build.signs[row] === 1 ? Math.max(0, y) : Math.min(0, y)));
  let bound = 0;
  for (let row = 0; row < linear.rows; row++) bound += clean[row]! * build.trueRhs[row]!;
  const reduced = linear.cost.map((cost, j) => {
    const { row, value } = linear.column[j]!;
    return row.reduce((left, r, k) => left - clean[r]! * value[k]!, cost);
  });
  reduced.forEach((left, j) => {
    if (left < 0) bound += left > -1e-6 && linear.upper[j]! >= NO_LIMIT ? 0 : left * linear.upper[j]!;
  });
  return { boundMills: Math.max(0, Math.ceil(bound - 1e-7 * Math.abs(bound) - 1e-3)), pieces: x.slice(first, first + count), reducedMills: Float64Array.from(reduced.slice(first, first + count)) };
}

/** Gathers rows and columns; every row gets a column of its own to begin with. */
class Builder {
  columns = 0;
  readonly trueRhs: number[] = [];
  /** Sign that a row's price may have: 1 for what must be reached, -1 for what must not be passed. */
  readonly signs: number[] = [];
  private readonly cost: number[] = [];
  private readonly upper: number[] = [];
  private readonly entries: { row: number[]; value: number[] }[] = [];
  private readonly start: number[] = [];

  row(rhs: number): number {
    this.trueRhs.push(rhs);
    this.signs.push(-1);
    return this.trueRhs.length - 1;
  }
  atMost(rhs: number): number {
    const row = this.row(rhs);
    this.begin(row, this.column(0, NO_LIMIT, [[row, 1]]));
    return row;
  }
  begin(row: number, column: number): void {
    this.start[row] = column;
  }
  sign(row: number, sign: 1 | -1): void {
    this.signs[row] = sign;
  }
  column(cost: number, upper: number, entries: readonly (readonly [number, number])[]): number {
    this.cost.push(cost);
    this.upper.push(upper);
    const used = entries.filter(([, value]) => value !== 0);
    this.entries.push({ row: used.map(([row]) => row), value: used.map(([, value]) => value) });
    return this.columns++;
  }
  linear(): Linear {
    const rhs = Float64Array.from(this.trueRhs, (value, row) => (value > 0 ? value : NUDGE * (1 + ((row * 7) % 13))));
    return { rows: this.trueRhs.length, rhs, cost: this.cost, upper: this.upper, column: this.entries, start: this.start };
  }
}
