import { round as en } from './en/round.js';
import { round as es } from './es/round.js';
import { wordsOf, type Say } from './words.js';

export type SayRoundWords = Say<typeof en>;
export const useRoundWords = wordsOf('round', en, es);
