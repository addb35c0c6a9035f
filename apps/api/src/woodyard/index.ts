export { Pulls } from './pulls.service.js';
export { WoodyardModule } from './woodyard.module.js';
export { WoodyardReactions } from './woodyard.reactions.js';
export { WoodyardStore } from './woodyard.store.js';
