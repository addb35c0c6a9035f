export { FirePages } from './fire-pages.service.js';
export { type FireDue, Fires, type FireStanding, type PitFire } from './fires.service.js';
export type { ChamberSeen } from './pits.store.js';
export { PitsModule } from './pits.module.js';
export { type CheckSeen, PitsReactions } from './pits.reactions.js';
export { shapeOf } from './tonight.js';
