import type { Reactions } from './platform/index.js';

/**
 * What every fact causes, in order: the one page on which the way of an event can be followed. A kind of event that is
 * left out does not compile. Screens are told of every event after all it caused (live/).
 */
export const reactionsOf = (): Reactions => ({
  'yard-set-up': [],
  'pit-set-up': [],
  'crew-set-up': [],
  'shift-planned': [],
  'presence-reported': [],
  'break-reported': [],
  'task-added': [],
  'task-finished': [],
  'handover-signed': [],
  'check-recorded': [],
  'readings-recorded': [],
  'weather-recorded': [],
  'lot-changed': [],
  'wood-moved': [],
  'cook-changed': [],
  'service-changed': [],
  'alarm-changed': [],
  'minute-passed': [],
  'fire-estimated': [],
  'due-moved': [],
  'plan-repaired': [],
});
