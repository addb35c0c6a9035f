export { ChecksModule } from './checks.module.js';
export { ChecksReactions } from './checks.reactions.js';
export { Checks } from './checks.service.js';
