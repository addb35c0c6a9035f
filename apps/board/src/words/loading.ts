import { loading as en } from './en/loading.js';
import { loading as es } from './es/loading.js';
import { wordsOf, type Say } from './words.js';

export type SayLoadingWords = Say<typeof en>;
export const useLoadingWords = wordsOf('loading', en, es);
