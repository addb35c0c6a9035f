import { desk as en } from './en/desk.js';
import { desk as es } from './es/desk.js';
import { wordsOf, type Say } from './words.js';

export type SayDeskWords = Say<typeof en>;
/** What the forms of the desk screens say. */
export const useDeskWords = wordsOf('desk', en, es);
