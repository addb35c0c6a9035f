import { describe, expect, it } from 'vitest';
import { handNight, handPerson, handPit, minute } from './hand-night.js';
import { boundOf, checkRounds, generatedNight, planRounds } from './index.js';
import { afterIterations } from '../search/index.js';

const places = ['yard', 'far'];
const walkS = [[0, 300], [300, 0]];

describe('what the first looks cost at the least', () => {
  it.each([
    // One person, checks of 5 min, no walking: dues at 2, 3 and 4 begin at 0, 5, 10: 0 + 2 + 6 min late.
    { what: 'three fires at once, one person', dues: [2, 3, 4], weights: [1, 1, 1], people: 1, lateMin: 8 },
    // Two people: 0, 0, 5: the last due at 4 waits until 5.
    { what: 'three fires at once, two people', dues: [2, 3, 4], weights: [1, 1, 1], people: 2, lateMin: 1 },
    // The heavy one first: 0 (due 4, weight 9), then 5 (due 2): 3 min, then 10 (due 3): 7 min.
    { what: 'the heavy fire first', dues: [2, 3, 4], weights: [1, 1, 9], people: 1, lateMin: 10 },
  ])('$what: $lateMin weighted minutes', ({ dues, weights, people, lateMin }) => {
    const problem = handNight({ people: ['ana', 'ben'].slice(0, people).map((id) => handPerson(id)), pits: dues.map((due, i) => handPit(`pit-${i}`, due, { weight: weights[i]! })) });
    expect(boundOf(problem).lateWeightedS).toBe(lateMin * 60);
  });

  it('walking to one fire and back to the next is part of it', () => {
    // At the yard: the fire there due at 0 begins at 0, is done at 5; 5 min to the far one, due at 0: 10 min late.
    // The other way round: far at 5 (5 late), done at 10, back at 15 (15 late): 20. The least is 10.
    const problem = handNight({ places, walkS, people: [handPerson('ana')], pits: [handPit('pit-1', 0), handPit('pit-2', 0, { place: 'far' })] });
    expect(boundOf(problem).lateWeightedS).toBe(600);
  });

  it('a table in which a detour is shorter than the way does not make it wrong', () => {
    const crooked = handNight({ places: ['yard', 'far', 'via'], walkS: [[0, 900, 60], [900, 0, 60], [60, 60, 0]], people: [handPerson('ana')], pits: [handPit('pit-1', 0, { place: 'far' })] });
    expect(boundOf(crooked).lateWeightedS).toBe(120);
  });

  it('nobody to look: late until the fire ends', () => {
    expect(boundOf(handNight({ pits: [handPit('pit-1', 30)], until: minute(100) })).lateWeightedS).toBe(70 * 60);
  });

  it('no plan of a drawn night is below it', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const problem = generatedNight({ pits: 5, people: 2, seed, hours: 4 });
      const { plan } = planRounds(problem, { seed, stop: afterIterations(60) });
      expect(checkRounds(problem, plan)).toEqual([]);
      expect(plan.levels.lateWeightedS).toBeGreaterThanOrEqual(plan.bound.lateWeightedS);
    }
  }, 60_000);
});
