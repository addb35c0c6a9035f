import { cookPlan as en } from './en/cook-plan.js';
import { cookPlan as es } from './es/cook-plan.js';
import { wordsOf, type Say } from './words.js';

export type SayCookPlanWords = Say<typeof en>;
export const useCookPlanWords = wordsOf('cook-plan', en, es);
