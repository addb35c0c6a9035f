export type {
  CookPit, CookPlanParameters, CookPlanProblem, CookStart, CookWay, CrewStretch, PitHeat, PlannedCook, PlannedService,
} from './problem.js';
export { COOK_PLAN_PARAMETERS, cookPlanParameter } from './problem.js';
export type {
  CookPlan, CookPlanLevels, CookReason, CookUnplaced, CrewHour, Help, PlannedBurn, PlannedStart, ServiceOutlook,
} from './plan.js';
export { validateCookPlan } from './validate.js';
export type { CookPlanRefusal } from './validate.js';
export { earliestService } from './earliest.js';
export type { EarliestService } from './earliest.js';
export { cookPlanBound } from './bound.js';
export { planCooks } from './plan-cooks.js';
export type { CookPlanOptions } from './plan-cooks.js';
export { checkCookPlan, weighCooks } from './checker.js';
export type { CookPlanViolation, WeighedCooks } from './checker.js';
export { whatIfCooks } from './what-if.js';
export type { CookPlanChange, CookPlanWhatIf } from './what-if.js';
export { everyCookPlan } from './every-cook-plan.js';
export { generatedYard } from './generated-yard.js';
export { inventedSaturday } from './saturday.js';
export type { GeneratedYard } from './generated-yard.js';
