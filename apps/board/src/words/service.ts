import { service as en } from './en/service.js';
import { service as es } from './es/service.js';
import { wordsOf, type Say } from './words.js';

export type SayServiceWords = Say<typeof en>;
export const useServiceWords = wordsOf('service', en, es);
