import type { RoundPlan, RoundProblem } from '@stokehold/scheduling/rounds';

export declare function roundsOfRoutes(name: 'R101' | 'C101', options?: { readonly vehicles?: number }): RoundProblem;
export declare function routesOf(name: 'R101' | 'C101', plan: RoundPlan): { readonly distance: number; readonly vehicles: number; readonly heaviest: number; readonly capacity: number };
export declare function run(): Promise<void>;
