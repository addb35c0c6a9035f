import type { CookId, EpochS, PitId, ServiceId } from '@stokehold/domain/quantity';
import { weighCooks, type WeighedCooks } from './checker.js';
import type { CookPlanProblem, CookStart } from './problem.js';

/** A time, a pit or a way dragged to another; or a service moved. */
export type CookPlanChange =
  | { readonly what: 'cook'; readonly cookId: CookId; readonly onAt?: EpochS; readonly pitId?: PitId; readonly way?: number }
  | { readonly what: 'service'; readonly serviceId: ServiceId; readonly readyBy: EpochS };

export interface CookPlanWhatIf {
  /** The problem and the starts as they would be. */
  readonly problem: CookPlanProblem;
  readonly starts: readonly CookStart[];
  readonly before: WeighedCooks;
  readonly after: WeighedCooks;
  readonly moreCents: number;
}

/** What would come of a change, nothing else moved: judged by the independent checker. Nothing is stored. Held to cook-plan/what-if.test.ts. */
export function whatIfCooks(problem: CookPlanProblem, starts: readonly CookStart[], change: CookPlanChange): CookPlanWhatIf {
  const changed = change.what === 'service' ? { ...problem, services: problem.services.map((one) => (one.id === change.serviceId ? { ...one, readyBy: change.readyBy } : one)) } : problem;
  const moved = change.what === 'service' ? starts : starts.map((one) => (one.cookId === change.cookId ? { cookId: one.cookId, pitId: change.pitId ?? one.pitId, way: change.way ?? one.way, onAt: change.onAt ?? one.onAt } : one));
  const before = weighCooks(problem, starts);
  const after = weighCooks(changed, moved);
  return { problem: changed, starts: moved, before, after, moreCents: after.levels.costCents - before.levels.costCents };
}
