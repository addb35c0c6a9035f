export { WoodModule } from './wood.module.js';
export { type Burned, Wood } from './wood.service.js';
export { type Lot, WoodStore } from './wood.store.js';
export { WoodViews } from './wood.view.js';
