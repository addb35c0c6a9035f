import type { CookPlanProblem } from '@stokehold/scheduling/cook-plan';

export declare function cookPlanAsMip(problem: CookPlanProblem): string;
export declare function smallYard(seed: number): CookPlanProblem;
