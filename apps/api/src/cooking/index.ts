export { CookingCuts } from './cooking-cuts.js';
export { CookingModule } from './cooking.module.js';
export { CookingReactions } from './cooking.reactions.js';
export { Cooking } from './cooking.service.js';
export { CookingStore } from './cooking.store.js';
export { HeldAgainst } from './held-against.js';
export { Watch } from './watch.js';
