export type { StopRule } from './stop.js';
export { afterIterations, whicheverFirst } from './stop.js';
