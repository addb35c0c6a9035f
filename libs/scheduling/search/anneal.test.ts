import { randomStream } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { afterIterations, anneal, exponential, whicheverFirst, type Reworkable } from './index.js';

/** A number that wanders on a line with many hollows; the lowest lies at 37. */
function hollow() {
  const costAt = (x: number) => (x - 37) ** 2 + (x % 5 === 2 ? 0 : 60);
  let [x, accepted, best] = [0, 0, 0];
  const work: Reworkable = {
    change: (random) => {
      x += random.below(7) - 3;
    },
    cost: () => costAt(x),
    accept: () => {
      accepted = x;
    },
    reject: () => {
      x = accepted;
    },
    keepIfBest: () => {
      if (costAt(x) < costAt(best)) best = x;
    },
    backToBest: () => {
      x = accepted = best;
    },
  };
  return { work, best: () => best };
}

describe('annealing', () => {
  it('climbs out of hollows and finds the lowest', () => {
    const { work, best } = hollow();
    expect(anneal(work, { random: randomStream(1), stop: afterIterations(3000), warm: 100, cold: 1, firstCycle: 500 })).toBe(3000);
    expect(best()).toBe(37);
  });

  it('asks the stop rule once an iteration', () => {
    const asked: number[] = [];
    anneal(hollow().work, { random: randomStream(1), warm: 1, cold: 1, stop: whicheverFirst(({ iterations }) => asked.push(iterations) < 0, afterIterations(4)) });
    expect(asked).toEqual([0, 1, 2, 3, 4]);
  });

  it('draws exponential numbers: mean 1, and one in e beyond 1', () => {
    const random = randomStream(5);
    const draws = Array.from({ length: 40_000 }, () => exponential(random));
    // Standard error of the mean 1/sqrt(40000) = 0.005; of the share sqrt(0.368 x 0.632 / 40000) = 0.0024: four of each.
    expect(Math.abs(draws.reduce((sum, draw) => sum + draw, 0) / draws.length - 1)).toBeLessThan(0.02);
    expect(Math.abs(draws.filter((draw) => draw > 1).length / draws.length - Math.exp(-1))).toBeLessThan(0.01);
  });
});
