export { Offcuts } from './offcuts.service.js';
export { Paces } from './paces.service.js';
export { WoodModule } from './wood.module.js';
export { type Burned, Wood } from './wood.service.js';
export { type KeptReading, type Lot, type OnCart, WoodStore } from './wood.store.js';
export { WoodViews } from './wood.view.js';
