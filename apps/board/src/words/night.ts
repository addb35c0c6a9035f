import { night as en } from './en/night.js';
import { night as es } from './es/night.js';
import { wordsOf, type Say } from './words.js';

export type SayNightWords = Say<typeof en>;
export const useNightWords = wordsOf('night', en, es);
