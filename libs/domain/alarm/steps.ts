import type { EpochS } from '../quantity/index.js';
import { type AlarmCondition, alarmConditions, isJudged, isOf, type NightNow, suppressionOf } from './conditions.js';
import { ALARM_LIST } from './list.js';
import type { OpenAlarm } from './open.js';
import { type AlarmStep, conditionHolds, type SuppressedBy } from './state.js';

/** A condition that has no alarm yet, and whether it may call. */
export interface Began {
  readonly condition: AlarmCondition;
  readonly suppressedBy: SuppressedBy | null;
}
/** A step that an alarm takes. */
export interface AlarmTakes {
  readonly alarm: OpenAlarm;
  readonly step: AlarmStep;
}

/**
 * What a look at the night does to the alarms: conditions without an alarm, and the steps of each alarm that takes any, in order.
 * Asked twice with the outcome of the first, it finds nothing more to do. What was not looked at says nothing.
 * Source: [IEC62682]. Held to conditions.test.ts.
 */
export function alarmSteps(night: NightNow, open: readonly OpenAlarm[]): { readonly began: readonly Began[]; readonly steps: readonly AlarmTakes[] } {
  const conditions = alarmConditions(night, open);
  const steps = open.flatMap((alarm): AlarmTakes[] => {
    const holds = isJudged(alarm, night) ? conditions.some(isOf(alarm)) : conditionHolds(alarm.state);
    return stepsOf(alarm, holds, night).map((step) => ({ alarm, step }));
  });
  const began = conditions.filter((condition) => !open.some(isOf(condition)));
  return { began: began.map((condition) => ({ condition, suppressedBy: suppressionOf(condition, night) })), steps };
}

function stepsOf(alarm: OpenAlarm, holds: boolean, night: NightNow): AlarmStep[] {
  const changed: AlarmStep[] = holds === conditionHolds(alarm.state) ? [] : [{ kind: holds ? 'condition-began' : 'condition-ended' }];
  const shelfEnds: AlarmStep[] = alarm.shelf && alarm.shelf.until <= night.now ? [{ kind: 'shelf-ended' }] : [];
  if (!holds) return [...changed, ...shelfEnds];
  const quiet = quietSteps(alarm, night);
  const asks: AlarmStep[] = isReminderDue(alarm, night.now) ? [{ kind: 'reminder-due' }] : [];
  return [...changed, ...shelfEnds, ...quiet, ...asks];
}

/** What was not looked at is not let call; what somebody took note of needs no rest until it comes back. */
function quietSteps(alarm: OpenAlarm, night: NightNow): AlarmStep[] {
  const by = suppressionOf(alarm, night);
  if (by === alarm.suppressedBy || (by === 'comes-back' && alarm.state === 'acknowledged' && !alarm.suppressedBy)) return [];
  if (by) return [{ kind: 'suppressed', by }];
  return isJudged(alarm, night) ? [{ kind: 'suppression-ended' }] : [];
}

function isReminderDue({ kind, state, acknowledgedAt }: OpenAlarm, now: EpochS): boolean {
  const { remindAfterS } = ALARM_LIST[kind];
  return state === 'acknowledged' && remindAfterS !== undefined && acknowledgedAt !== undefined && now - acknowledgedAt >= remindAfterS;
}
