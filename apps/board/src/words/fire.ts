import { fire as en } from './en/fire.js';
import { fire as es } from './es/fire.js';
import { wordsOf, type Say } from './words.js';

export type SayFireWords = Say<typeof en>;
/** What is said of one fire on every screen: its air, and what may be wrong with it. */
export const useFireWords = wordsOf('fire', en, es);
