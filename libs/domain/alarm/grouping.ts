import type { EpochS, PitId } from '../quantity/index.js';
import { ALARM_LIST, type AlarmKind, byPriority } from './list.js';
import { type AlarmState, conditionHolds } from './state.js';

interface Grouped {
  readonly id: string;
  readonly kind: AlarmKind;
  readonly pitId: PitId | null;
  readonly state: AlarmState;
  readonly raisedAt: EpochS;
}

/**
 * Which alarm each one stands under: its first cause, of the same pit or of the whole yard, while that cause's condition holds. A
 * cause that stands under another takes those under it along. Those that stand under none are absent. Held to grouping.test.ts
 */
export function causesOf(open: readonly Grouped[]): ReadonlyMap<string, string> {
  const causes = open.filter(({ state, kind }) => conditionHolds(state) && ALARM_LIST[kind].covers.length > 0).sort(byPriority);
  const under = new Map<string, string>();
  for (const alarm of open) {
    const cause = causes.find((one) => one.id !== alarm.id && ALARM_LIST[one.kind].covers.includes(alarm.kind) && (one.pitId === null || one.pitId === alarm.pitId));
    if (cause) under.set(alarm.id, cause.id);
  }
  return under;
}
