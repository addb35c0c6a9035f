import { print as en } from './en/print.js';
import { print as es } from './es/print.js';
import { wordsOf } from './words.js';

export const usePrintWords = wordsOf('print', en, es);
