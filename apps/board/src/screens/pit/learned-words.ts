import type { LearnedView } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayPitWords } from '../../words/pit.js';

export const FACTORS = ['loss', 'burn', 'coal'] as const;

/** Nearer to its set-up value than this, a pit is as set up. */
const AS_SET_UP_FRAC = 0.03;

/** What a pit has taught, a sentence each: 'loses 12 % more heat than set up'. */
export const learnedWords = (learned: LearnedView, say: SayPitWords, figures: Figures): readonly string[] =>
  FACTORS.map((name) => {
    const change = Math.exp(learned[name].log) - 1;
    const side = Math.abs(change) < AS_SET_UP_FRAC ? 'same' : change > 0 ? 'more' : 'less';
    return say(`taught.${name}.${side}`, { percent: figures.percent(Math.abs(change)) });
  });
