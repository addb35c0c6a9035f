import { food as en } from './en/food.js';
import { food as es } from './es/food.js';
import { wordsOf, type Say } from './words.js';

export type SayFoodWords = Say<typeof en>;
export const useFoodWords = wordsOf('food', en, es);
