export { surroundingsOf } from './around.js';
export { endTempsOf } from './ends.js';
export type { EndTemps, ZoneTemp } from './ends.js';
export { radiantFluxWPerM2 } from './radiant.js';
export { elementBesideRectangle, elementFacingCorner, elementFacingMiddle, facingRectangles, rectanglesOnEdge } from './view-factor.js';
export { windFromFireEndRad } from './wind-angle.js';
