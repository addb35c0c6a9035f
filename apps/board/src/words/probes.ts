import { probes as en } from './en/probes.js';
import { probes as es } from './es/probes.js';
import { wordsOf } from './words.js';

export const useProbeWords = wordsOf('probes', en, es);
