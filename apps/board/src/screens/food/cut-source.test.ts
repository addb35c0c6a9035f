import { STARTING_CUTS } from '@stokehold/domain/food';
import { expect, it } from 'vitest';
import type { SayFoodWords } from '../../words/food.js';
import '../../words/food.js';
import { sayIn } from '../../words/words.js';
import { sourceOf } from './cut-source.js';

const say = sayIn('es', 'food') as SayFoodWords;

it.each(STARTING_CUTS.map(({ code, source }) => ({ code, source })))('the source of $code is said in Spanish', (cut) => {
  expect(sourceOf(cut, sayIn('en', 'food') as SayFoodWords)).toBe(cut.source);
  expect(sourceOf(cut, say)).toMatch(/composición/);
});
it('what a kitchen wrote itself stays as it was written', () => {
  expect(sourceOf({ code: 'brisket', source: 'weighed ten of our own' }, say)).toBe('weighed ten of our own');
  expect(sourceOf({ code: 'goat', source: 'weighed ten of our own' }, say)).toBe('weighed ten of our own');
});
