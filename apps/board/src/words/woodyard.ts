import { woodyard as en } from './en/woodyard.js';
import { woodyard as es } from './es/woodyard.js';
import { wordsOf, type Say } from './words.js';

export type SayWoodyardWords = Say<typeof en>;
export const useWoodyardWords = wordsOf('woodyard', en, es);
