import type { AlarmsReactions } from './alarms/index.js';
import type { ChecksReactions } from './checks/index.js';
import type { CookingReactions } from './cooking/index.js';
import type { PitsReactions } from './pits/index.js';
import type { PlanningReactions } from './planning/index.js';
import type { Reactions } from './platform/index.js';
import type { WoodyardReactions } from './woodyard/index.js';

/** Who reacts. */
export interface Reacting {
  readonly alarms: AlarmsReactions;
  readonly pits: PitsReactions;
  readonly checks: ChecksReactions;
  readonly cooking: CookingReactions;
  readonly planning: PlanningReactions;
  readonly woodyard: WoodyardReactions;
}

/**
 * What every fact causes, in order: the one page on which the way of an event can be followed. A kind of event that is
 * left out does not compile. Screens are told of every event after all it caused (live/).
 */
export const reactionsOf = ({ alarms, pits, checks, cooking, planning, woodyard }: Reacting): Reactions => ({
  'yard-set-up': [(event, deed) => planning.onSetUp(event, deed)],
  'pit-set-up': [(event, deed) => planning.onSetUp(event, deed)],
  'crew-set-up': [(event, deed) => planning.onSetUp(event, deed)],
  'shift-planned': [(event, deed) => pits.onShiftPlanned(event, deed), (event, deed) => planning.onShift(event, deed)],
  'presence-reported': [(event, deed) => planning.onPresence(event, deed)],
  'break-reported': [(event, deed) => planning.onBreak(event, deed)],
  'task-added': [(event, deed) => planning.onTask(event, deed)],
  'task-finished': [(event, deed) => pits.onTaskFinished(event, deed), (event, deed) => planning.onTask(event, deed)],
  'work-pinned': [(event, deed) => planning.onPinned(event, deed)],
  'handover-signed': [],
  'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed), (event, deed) => woodyard.onCheckRecorded(event, deed)],
  'readings-recorded': [(event, deed) => alarms.onReadings(event, deed)],
  'gateway-changed': [],
  'clock-stepped': [],
  'learned-set-back': [(event, deed) => pits.onLearnedSetBack(event, deed)],
  'weather-recorded': [],
  'lot-changed': [],
  'wood-moved': [],
  'cook-changed': [(event, deed) => cooking.onCook(event, deed), (event, deed) => woodyard.onCook(event, deed)],
  'food-recorded': [(event, deed) => cooking.onRecorded(event, deed)],
  'food-judged': [(event, deed) => alarms.onFoodJudged(event, deed)],
  'service-changed': [],
  'alarm-changed': [(event, deed) => alarms.onAlarmChanged(event, deed)],
  'minute-passed': [(event, deed) => pits.onMinute(event, deed), (event, deed) => alarms.onMinute(event, deed), (event, deed) => planning.onMinute(event, deed), (event, deed) => cooking.onMinute(event, deed)],
  'fire-estimated': [(event, deed) => alarms.onFireEstimated(event, deed)],
  'due-moved': [(event, deed) => planning.onDueMoved(event, deed)],
  'plan-repaired': [],
});
