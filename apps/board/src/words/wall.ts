import { wall as en } from './en/wall.js';
import { wall as es } from './es/wall.js';
import { wordsOf, type Say } from './words.js';

export type SayWallWords = Say<typeof en>;
export const useWallWords = wordsOf('wall', en, es);
