import { entry as en } from './en/entry.js';
import { entry as es } from './es/entry.js';
import { wordsOf } from './words.js';

export const useEntryWords = wordsOf('entry', en, es);
