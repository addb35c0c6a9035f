export type { FireWindow, Look, LookGap, NightFacts, NightTask, Shown } from './facts.js';
export { problemOfNight, WOOD_PLACE } from './problem-of-night.js';
export { changesBetween } from './changes.js';
export type { ShownChange } from './changes.js';
export { isOverrun, isWorthForDue } from './worth.js';
export { planNight } from './plan-night.js';
export type { PlannedNight } from './plan-night.js';
