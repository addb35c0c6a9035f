import { setup as en } from './en/setup.js';
import { setup as es } from './es/setup.js';
import { wordsOf, type Say } from './words.js';

export type SaySetupWords = Say<typeof en>;
export const useSetupWords = wordsOf('setup', en, es);
