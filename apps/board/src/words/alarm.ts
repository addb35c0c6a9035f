import { alarm as en } from './en/alarm.js';
import { alarm as es } from './es/alarm.js';
import { wordsOf, type Say } from './words.js';

export type SayAlarmWords = Say<typeof en>;
/** What is said of alarms on every screen. */
export const useAlarmWords = wordsOf('alarm', en, es);
