export { surroundingsOf } from './around.js';
export { endTempsOf } from './ends.js';
export type { EndTemps, ZoneTemp } from './ends.js';
export { windFromFireEndRad } from './wind-angle.js';
