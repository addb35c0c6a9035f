export { loadFrac } from './load.js';
export { placementOf } from './placement.js';
export type { Lying, PlacementRefusal } from './placement.js';
