import type { LearnedView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import type { pit } from '../../words/en/pit.js';
import '../../words/pit.js';
import { sayIn } from '../../words/words.js';
import { learnedWords } from './learned-words.js';

const words = (learned: LearnedView, language: 'en' | 'es') =>
  learnedWords(learned, sayIn<typeof pit>(language, 'pit'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language }));

describe('what a pit has taught, in words', () => {
  // By hand: exp(0.1133) = 1.12, exp(-0.0834) = 0.92, exp(0.01) = 1.01: within 3 % of as set up.
  const learned: LearnedView = { loss: { log: 0.1133, sd: 0.05 }, burn: { log: -0.0834, sd: 0.05 }, coal: { log: 0.01, sd: 0.05 } };

  it('says each multiplier against the set-up value', () => {
    expect(words(learned, 'en')).toEqual(['loses 12\u00a0% more heat than set up', 'burns its splits 8\u00a0% slower than set up', 'burns its coals as set up']);
  });

  it('says the same in Spanish', () => {
    expect(words(learned, 'es')[0]).toBe('pierde 12\u00a0% más calor de lo puesto');
  });
});
