import { refusal as en } from './en/refusal.js';
import { refusal as es } from './es/refusal.js';
import { wordsOf, type Say } from './words.js';

export type SayRefusalWords = Say<typeof en>;
/** Why the server said no, by code: what is the matter and what to do. */
export const useRefusalWords = wordsOf('refusal', en, es);
