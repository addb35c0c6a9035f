export type { Progress, StopRule } from './stop.js';
export { afterIterations, whicheverFirst, whileWaited, withinMs } from './stop.js';
export { anneal, exponential } from './anneal.js';
export type { AnnealOptions, Reworkable } from './anneal.js';
export { firstWrong, outOfRange, parameterOf } from './given.js';
export type { Ranges } from './given.js';
