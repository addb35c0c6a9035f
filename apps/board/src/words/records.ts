import { records as en } from './en/records.js';
import { records as es } from './es/records.js';
import { wordsOf, type Say } from './words.js';

export type SayRecordsWords = Say<typeof en>;
export const useRecordsWords = wordsOf('records', en, es);
