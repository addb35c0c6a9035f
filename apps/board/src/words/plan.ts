import { plan as en } from './en/plan.js';
import { plan as es } from './es/plan.js';
import { wordsOf, type Say } from './words.js';

export type SayPlanWords = Say<typeof en>;
/** Answers about the plan, and decisions by hand. */
export const usePlanWords = wordsOf('plan', en, es);
