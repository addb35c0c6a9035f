export type { StopRule } from './stop.js';
export { afterIterations, whicheverFirst } from './stop.js';
export { anneal, exponential } from './anneal.js';
export type { AnnealOptions, Reworkable } from './anneal.js';
