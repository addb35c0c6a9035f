export { FoodModule } from './food.module.js';
export { Food } from './food.service.js';
export { FoodStore, type Lay } from './food.store.js';
