import type { RandomStream } from '@stokehold/domain/quantity';
import type { StopRule } from './stop.js';

/** Something that can be ruined and recreated. */
export interface Reworkable {
  /** Changes the current solution at random. */
  change(random: RandomStream): void;
  /** Its cost, a whole number. */
  cost(): number;
  /** Makes the changed solution the one to go on from. */
  accept(): void;
  /** Back to the one last accepted. */
  reject(): void;
  /** Keeps the current solution if it is the best so far, by whatever order counts. */
  keepIfBest(): void;
  /** Goes on from the best so far. */
  backToBest(): void;
}

export interface AnnealOptions {
  readonly random: RandomStream;
  readonly stop: StopRule;
  /** Rise in cost that is taken one time in e at the start and end of a cycle. */
  readonly warm: number;
  readonly cold: number;
  /**
   * Iterations of the first cycle; each later one is twice as long and begins at the best so far. Default: all that the
   * stop rule allows where it knows, else 1500.
   */
  readonly firstCycle?: number;
}

/**
 * Annealing by iterations: the temperature falls as a cube from warm to cold, then again over a cycle twice as long.
 * Multiplications and comparisons only, so that every machine takes the same way.
 *
 * @returns the iterations made
 */
export function anneal(work: Reworkable, options: AnnealOptions): number {
  const { random, stop, warm, cold } = options;
  let current = work.cost();
  let iterations = 0;
  let length = Math.max(1, options.firstCycle ?? stop.most ?? 1500);
  let inCycle = 0;
  while (!stop({ iterations })) {
    if (inCycle === length) {
      work.backToBest();
      current = work.cost();
      length *= 2;
      inCycle = 0;
    }
    const left = 1 - inCycle / length;
    const temperature = cold + (warm - cold) * left * left * left;
    work.change(random);
    const cost = work.cost();
    if (cost - current <= temperature * exponential(random)) {
      work.accept();
      work.keepIfBest();
      current = cost;
    } else {
      work.reject();
    }
    iterations += 1;
    inCycle += 1;
  }
  return iterations;
}

/** An exponential number of mean 1 by comparisons alone (J. von Neumann 1951, from memory). */
export function exponential(random: RandomStream): number {
  for (let whole = 0; ; whole++) {
    const first = random.next();
    let last = first;
    for (let run = 1; ; run++) {
      const next = random.next();
      if (next >= last) {
        if (run % 2 === 1) return whole + first;
        break;
      }
      last = next;
    }
  }
}
