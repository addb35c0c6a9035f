import { shared as en } from './en/shared.js';
import { shared as es } from './es/shared.js';
import { wordsOf, type Say } from './words.js';

export type SharedWords = typeof en;
export type SaySharedWords = Say<SharedWords>;
/** Words that several screens say: species, actions, refusals by code, kinds of task. */
export const useSharedWords = wordsOf('shared', en, es);
