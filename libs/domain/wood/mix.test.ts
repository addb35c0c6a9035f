import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mixOfFire, possibleMix, SPECIES, type SpeciesWish } from './index.js';

const wish = (species: SpeciesWish['species'], leastFrac: number, mostFrac = 1): SpeciesWish => ({ species, leastFrac, mostFrac });

describe('the kitchen\'s wish of wood', () => {
  it.each([
    { what: 'half hickory, half apple', mix: [wish('shagbark-hickory', 0.5), wish('apple', 0.5)], code: undefined },
    { what: 'a species named twice', mix: [wish('apple', 0.2), wish('apple', 0.3)], code: 'species-twice' },
    { what: 'at least 60 % and at most 40 %', mix: [wish('apple', 0.6, 0.4)], code: 'least-above-most' },
    { what: '70 % of one and 40 % of another', mix: [wish('apple', 0.7), wish('pecan', 0.4)], code: 'leasts-above-whole' },
  ])('$what: $code', ({ mix, code }) => {
    const possible = possibleMix(mix);
    expect(possible.ok ? undefined : possible.refusal.code).toBe(code);
  });

  it('two cooks on one fire meet halfway by their mass; one without a wish takes any wood', () => {
    const hickory = { massKg: 30, mix: [wish('shagbark-hickory', 0.5)] };
    expect(mixOfFire([hickory, { massKg: 70, mix: [] }])).toEqual([wish('shagbark-hickory', 0.5)]);
    // by hand: 30 x 0.5 / 40 hickory, 10 x 0.8 / 40 apple
    expect(mixOfFire([hickory, { massKg: 10, mix: [wish('apple', 0.8, 0.9)] }])).toEqual([wish('apple', 0.2, 0.975), wish('shagbark-hickory', 0.375)]);
    expect(mixOfFire([])).toEqual([]);
  });

  it('what comes of possible wishes is possible', () => {
    const mix = fc.uniqueArray(fc.record({ species: fc.constantFrom(...SPECIES), leastFrac: fc.double({ min: 0, max: 1, noNaN: true }), mostFrac: fc.double({ min: 0, max: 1, noNaN: true }) }), { selector: ({ species }) => species, maxLength: 4 });
    fc.assert(fc.property(fc.array(fc.record({ massKg: fc.double({ min: 0.1, max: 200, noNaN: true }), mix }), { maxLength: 5 }), (cooks) => {
      const possible = cooks.filter((cook) => possibleMix(cook.mix).ok);
      expect(possibleMix(mixOfFire(possible)).ok).toBe(true);
    }));
  });
});
