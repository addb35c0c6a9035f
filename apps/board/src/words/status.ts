import { status as en } from './en/status.js';
import { status as es } from './es/status.js';
import { wordsOf, type Say } from './words.js';

export type SayStatusWords = Say<typeof en>;
export const useStatusWords = wordsOf('status', en, es);
