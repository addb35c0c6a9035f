export { SearchBudget } from './budget.js';
export { Improver } from './improver.js';
export type { Assigned } from './plan.store.js';
export { PlanningModule } from './planning.module.js';
export { PlanningReactions } from './planning.reactions.js';
export { Plans } from './plans.service.js';
