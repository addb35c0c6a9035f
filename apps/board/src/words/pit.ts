import { pit as en } from './en/pit.js';
import { pit as es } from './es/pit.js';
import { wordsOf, type Say } from './words.js';

export type SayPitWords = Say<typeof en>;
export const usePitWords = wordsOf('pit', en, es);
