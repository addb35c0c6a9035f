import type { ChecksReactions } from './checks/index.js';
import type { PitsReactions } from './pits/index.js';
import type { Reactions } from './platform/index.js';

/** Who reacts. */
export interface Reacting {
  readonly pits: PitsReactions;
  readonly checks: ChecksReactions;
}

/**
 * What every fact causes, in order: the one page on which the way of an event can be followed. A kind of event that is
 * left out does not compile. Screens are told of every event after all it caused (live/).
 */
export const reactionsOf = ({ pits, checks }: Reacting): Reactions => ({
  'yard-set-up': [],
  'pit-set-up': [],
  'crew-set-up': [],
  'shift-planned': [(event, deed) => pits.onShiftPlanned(event, deed)],
  'presence-reported': [],
  'break-reported': [],
  'task-added': [],
  'task-finished': [(event, deed) => pits.onTaskFinished(event, deed)],
  'handover-signed': [],
  'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
  'readings-recorded': [],
  'weather-recorded': [],
  'lot-changed': [],
  'wood-moved': [],
  'cook-changed': [],
  'service-changed': [],
  'alarm-changed': [],
  'minute-passed': [(event, deed) => pits.onMinute(event, deed)],
  'fire-estimated': [],
  'due-moved': [],
  'plan-repaired': [],
});
