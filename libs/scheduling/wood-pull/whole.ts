import type { RandomStream } from '@stokehold/domain/quantity';
import type { Reworkable } from '../search/index.js';
import type { PullBound } from './bound.js';
import type { PullModel } from './cells.js';
import { parameter } from './problem.js';

/** How many piles a load looks at: those nearest to what the relaxation would take. Source: tests/bench/wood.mjs. */
const NEAREST = 40;
const MJ = 1e6;

/** Whole splits on every load, kept inside the hard rules, priced as they change: the state that the search works on. */
export class WholePull implements Reworkable {
  readonly pieces: Int32Array;
  private readonly stockLeft: Int32Array;
  private readonly loadHeat: Float64Array;
  private readonly loadKg: Float64Array;
  private readonly loadOffcutJ: Float64Array;
  private readonly shareHeat: Float64Array[];
  private readonly pitWet: Float64Array;
  private readonly pitMills: Float64Array;
  private readonly pitPoints: Float64Array;
  private pieceMills = 0;
  private readonly near: readonly (readonly number[])[];
  private readonly best: Int32Array;
  private bestCost = Infinity;
  private readonly log: [number, number][] = [];
  private readonly p;

  constructor(private readonly model: PullModel, relaxed: PullBound) {
    const { loads, problem, cells } = model;
    this.pieces = new Int32Array(cells.length);
    this.best = new Int32Array(cells.length);
    this.stockLeft = Int32Array.from(problem.piles, ({ pieces }) => pieces);
    this.loadHeat = new Float64Array(loads.length);
    this.loadKg = new Float64Array(loads.length);
    this.loadOffcutJ = new Float64Array(loads.length);
    this.shareHeat = loads.map(({ shares }) => new Float64Array(shares.length));
    this.pitWet = new Float64Array(problem.pits.length);
    this.pitMills = new Float64Array(problem.pits.length);
    this.pitPoints = new Float64Array(problem.pits.length);
    this.p = {
      short: parameter(problem, 'shortMillsPerMj'), reserve: parameter(problem, 'reserveMillsPerMj'), mix: parameter(problem, 'mixMillsPerMj'), fair: parameter(problem, 'fairMills'),
    };
    this.near = model.cellsOfLoad.map((own) => [...own].sort((a, b) => relaxed.reducedMills[a]! / cells[a]!.heatJ - relaxed.reducedMills[b]! / cells[b]!.heatJ || a - b).slice(0, NEAREST));
    cells.forEach((_, c) => this.put(c, Math.floor(relaxed.pieces[c]! + 1e-6)));
    problem.pits.forEach((_, p) => this.price(p));
    this.fill();
    this.log.length = 0;
    this.keepIfBest();
  }

  /** Adds or takes splits of a cell if the hard rules allow it. */
  private put(c: number, count: number): boolean {
    if (count === 0) return true;
    const cell = this.model.cells[c]!;
    const load = this.model.loads[cell.load]!;
    if (this.pieces[c]! + count < 0 || this.stockLeft[cell.pile]! < count) return false;
    if (count > 0 && this.loadKg[cell.load]! + count * cell.massKg > load.cartKg + 1e-6) return false;
    if (cell.isOffcut && count > 0 && this.loadOffcutJ[cell.load]! + count * cell.heatJ > load.offcutJ) return false;
    this.pieces[c]! += count;
    this.stockLeft[cell.pile]! -= count;
    this.loadHeat[cell.load]! += count * cell.heatJ;
    this.loadKg[cell.load]! += count * cell.massKg;
    if (cell.isOffcut) this.loadOffcutJ[cell.load]! += count * cell.heatJ;
    this.pitWet[load.pit]! += count * cell.wetPoints * cell.heatJ;
    this.pieceMills += count * cell.mills;
    const shares = this.shareHeat[cell.load]!;
    for (let s = 0; s < shares.length; s++) if (this.model.isOfShare(cell.load, s, c)) shares[s]! += count * cell.heatJ;
    this.log.push([c, count]);
    return true;
  }

  /** What is missing on a pit's loads, and beside the kitchen's wish, mills. */
  private price(p: number): void {
    let [mills, soFar] = [0, 0];
    for (const i of this.model.loadsOfPit[p]!) {
      const load = this.model.loads[i]!;
      const heat = this.loadHeat[i]!;
      soFar += heat;
      const missing = Math.max(0, load.needSoFarJ + load.reserveJ - soFar);
      const short = Math.max(0, load.needSoFarJ - soFar);
      mills += Math.ceil((this.p.short * short) / MJ) + Math.ceil((this.p.reserve * (missing - short)) / MJ);
      for (let s = 0; s < load.shares.length; s++) {
        const own = this.shareHeat[i]![s]!;
        const off = Math.max(0, load.shares[s]!.leastFrac * heat - own) + Math.max(0, own - load.shares[s]!.mostFrac * heat);
        mills += Math.ceil((this.p.mix * off) / MJ - 1e-9);
      }
    }
    this.pitMills[p] = mills;
    this.pitPoints[p] = Math.ceil(this.pitWet[p]! / this.model.needOfPitJ[p]! - 1e-9);
  }

  cost(): number {
    let [mills, wettest] = [this.pieceMills, 0];
    for (let p = 0; p < this.pitMills.length; p++) {
      mills += this.pitMills[p]!;
      if (this.pitPoints[p]! > wettest) wettest = this.pitPoints[p]!;
    }
    return mills + this.p.fair * wettest;
  }

  /** Adds the split that gains most until none does. */
  private fill(): void {
    for (;;) {
      let [best, gain] = [-1, 0];
      const before = this.cost();
      for (const own of this.near) {
        for (const c of own) {
          if (!this.put(c, 1)) continue;
          const pit = this.model.loads[this.model.cells[c]!.load]!.pit;
          this.price(pit);
          if (before - this.cost() > gain) [best, gain] = [c, before - this.cost()];
          this.put(c, -1);
          this.price(pit);
        }
      }
      this.log.length = 0;
      if (best < 0) return;
      this.put(best, 1);
      this.price(this.model.loads[this.model.cells[best]!.load]!.pit);
    }
  }

  change(random: RandomStream): void {
    this.log.length = 0;
    const i = random.below(this.model.loads.length);
    const near = this.near[i]!;
    if (near.length === 0) return;
    const draw = random.next();
    const some = near[random.below(near.length)]!;
    if (draw < 0.12) this.put(some, 1);
    else if (draw < 0.24) this.put(this.usedOf(near, random), -1);
    else if (draw < 0.8) this.swap(this.usedOf(near, random), some, random);
    else this.exchange(i, this.usedOf(near, random), random);
    for (const [c] of this.log) this.price(this.model.loads[this.model.cells[c]!.load]!.pit);
  }

  /** Some cell that holds splits; any, where none does. */
  private usedOf(near: readonly number[], random: RandomStream): number {
    const from = random.below(near.length);
    const nth = near.findIndex((_, k) => this.pieces[near[(from + k) % near.length]!]! > 0);
    return near[(from + Math.max(0, nth)) % near.length]!;
  }

  /** One of these for one of those, now and then two for one. */
  private swap(out: number, into: number, random: RandomStream): void {
    const count = random.next() < 0.2 ? 2 : 1;
    if (out === into || !this.put(out, -count)) return;
    if (!this.put(into, random.next() < 0.15 ? 3 - count : count)) this.reject();
  }

  /** A split of this load for a split of another load. */
  private exchange(i: number, own: number, random: RandomStream): void {
    const other = random.below(this.model.loads.length);
    const theirs = this.near[other]!;
    if (other === i || theirs.length === 0) return;
    const their = this.usedOf(theirs, random);
    const { cells } = this.model;
    const [give, take] = [this.model.cellAt(other, cells[own]!.pile), this.model.cellAt(i, cells[their]!.pile)];
    if (give < 0 || take < 0) return;
    if (!(this.put(own, -1) && this.put(give, 1) && this.put(their, -1) && this.put(take, 1))) this.reject();
  }

  accept(): void {
    this.log.length = 0;
  }

  reject(): void {
    const done = this.log.splice(0);
    for (const [c, count] of done.reverse()) this.put(c, -count);
    for (const [c] of done) this.price(this.model.loads[this.model.cells[c]!.load]!.pit);
    this.log.length = 0;
  }

  keepIfBest(): void {
    const cost = this.cost();
    if (cost >= this.bestCost) return;
    this.bestCost = cost;
    this.best.set(this.pieces);
  }

  backToBest(): void {
    const away = [...this.pieces.keys()].filter((c) => this.pieces[c] !== this.best[c]);
    for (const c of away) this.put(c, -this.pieces[c]!);
    for (const c of away) this.put(c, this.best[c]!);
    this.model.problem.pits.forEach((_, p) => this.price(p));
    this.log.length = 0;
  }

  /** Splits per cell of the best plan found. */
  bestPieces(): Int32Array {
    return this.best;
  }
}
