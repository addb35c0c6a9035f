/** A linear programme whose rows all hold at x = 0 with the columns of `start` in the basis, each the only one in its row. */
export interface Linear {
  readonly rows: number;
  /** Right-hand sides, 0 or more. */
  readonly rhs: Float64Array;
  readonly cost: readonly number[];
  /** Greatest value of each column; all are 0 or more. */
  readonly upper: readonly number[];
  readonly column: readonly { readonly row: readonly number[]; readonly value: readonly number[] }[];
  /** For each row the column that is basic in it at first, with coefficient 1. */
  readonly start: readonly number[];
}
export interface LinearAnswer {
  readonly x: Float64Array;
  /** Price of each row. */
  readonly price: Float64Array;
  readonly iterations: number;
  readonly isBest: boolean;
}

const SMALL = 1e-9;
const TINY_PIVOT = 1e-7;
/** After this many steps without a gain, columns are taken in order: then no basis comes twice. (Bland 1977, from memory.) */
const STUCK = 60;

/**
 * Least cost of a linear programme with bounded columns: the revised simplex method with a dense inverse.
 * min c x,  A x = b,  0 <= x <= u. Source: the textbook method (Dantzig), from memory; held to a general library in wood-pull.test.ts.
 */
export function leastCost(linear: Linear, mostIterations = 20_000): LinearAnswer {
  const state = new Basis(linear);
  let [iterations, stuck] = [0, 0];
  for (; iterations < mostIterations; iterations++) {
    const enter = state.entering(stuck > STUCK);
    if (enter < 0) return { x: state.values(), price: state.price, iterations, isBest: true };
    stuck = state.step(enter) > SMALL ? 0 : stuck + 1;
  }
  return { x: state.values(), price: state.price, iterations, isBest: false };
}

class Basis {
  readonly price: Float64Array;
  private readonly m: number;
  private readonly inverse: Float64Array;
  private readonly basic: Int32Array;
  private readonly value: Float64Array;
  private readonly atUpper: Uint8Array;
  private readonly rowOf: Int32Array;
  private readonly alpha: Float64Array;

  constructor(private readonly linear: Linear) {
    const { rows, rhs, start, cost } = linear;
    this.m = rows;
    this.inverse = new Float64Array(rows * rows);
    for (let i = 0; i < rows; i++) this.inverse[i * rows + i] = 1;
    this.basic = Int32Array.from(start);
    this.value = Float64Array.from(rhs);
    this.atUpper = new Uint8Array(cost.length);
    this.rowOf = new Int32Array(cost.length).fill(-1);
    start.forEach((column, row) => (this.rowOf[column] = row));
    this.price = Float64Array.from(start, (column) => cost[column]!);
    this.alpha = new Float64Array(rows);
  }

  private reduced(column: number): number {
    const { row, value } = this.linear.column[column]!;
    let cost = this.linear.cost[column]!;
    for (let k = 0; k < row.length; k++) cost -= this.price[row[k]!]! * value[k]!;
    return cost;
  }

  /** The column that gains most, or the first that gains; -1 when none does. */
  entering(inOrder: boolean): number {
    let [best, gain] = [-1, 1e-6];
    for (let column = 0; column < this.linear.cost.length; column++) {
      if (this.rowOf[column]! >= 0 || this.linear.upper[column]! <= 0) continue;
      const reduced = this.reduced(column);
      const wins = this.atUpper[column] ? reduced : -reduced;
      if (wins > gain) {
        best = column;
        gain = wins;
        if (inOrder) return best;
      }
    }
    return best;
  }

  /** Brings a column in, or from one of its bounds to the other; how far it went. */
  step(enter: number): number {
    const { m, alpha, inverse } = this;
    const { row, value } = this.linear.column[enter]!;
    alpha.fill(0);
    for (let k = 0; k < row.length; k++) for (let i = 0; i < m; i++) alpha[i]! += inverse[i * m + row[k]!]! * value[k]!;
    const sign = this.atUpper[enter] ? -1 : 1;
    let [leave, far, toUpper] = [-1, this.linear.upper[enter]!, false];
    for (let i = 0; i < m; i++) {
      const change = sign * alpha[i]!;
      if (Math.abs(change) < TINY_PIVOT) continue;
      const room = change > 0 ? this.value[i]! / change : (this.linear.upper[this.basic[i]!]! - this.value[i]!) / -change;
      if (room < far - SMALL || (leave >= 0 && room < far + SMALL && Math.abs(change) > Math.abs(alpha[leave]!))) {
        [leave, far, toUpper] = [i, Math.max(0, Math.min(room, far)), change < 0];
      }
    }
    for (let i = 0; i < m; i++) this.value[i]! -= sign * far * alpha[i]!;
    if (leave < 0) {
      this.atUpper[enter] = this.atUpper[enter] ? 0 : 1;
      return far;
    }
    this.pivot(enter, leave, toUpper, sign > 0 ? far : this.linear.upper[enter]! - far);
    return far;
  }

  private pivot(enter: number, leave: number, toUpper: boolean, value: number): void {
    const { m, alpha, inverse } = this;
    const reduced = this.reduced(enter);
    const gone = this.basic[leave]!;
    const pivot = alpha[leave]!;
    const own = inverse.subarray(leave * m, leave * m + m);
    for (let k = 0; k < m; k++) own[k]! /= pivot;
    for (let i = 0; i < m; i++) {
      const times = alpha[i]!;
      if (i === leave || times === 0) continue;
      const at = i * m;
      for (let k = 0; k < m; k++) inverse[at + k]! -= times * own[k]!;
    }
    for (let k = 0; k < m; k++) this.price[k]! += reduced * own[k]!;
    this.rowOf[gone] = -1;
    this.atUpper[gone] = toUpper ? 1 : 0;
    this.rowOf[enter] = leave;
    this.atUpper[enter] = 0;
    this.basic[leave] = enter;
    this.value[leave] = value;
  }

  values(): Float64Array {
    const x = new Float64Array(this.linear.cost.length);
    for (let column = 0; column < x.length; column++) x[column] = this.rowOf[column]! >= 0 ? this.value[this.rowOf[column]!]! : this.atUpper[column] ? this.linear.upper[column]! : 0;
    return x;
  }
}
