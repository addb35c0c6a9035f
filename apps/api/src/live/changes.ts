import type { EventKind, EventOf, LiveChange, YardEvent } from '@stokehold/domain/contract';
import type { PitId } from '@stokehold/domain/quantity';

/** A part of the state that is sent as a whole; pits are sent one by one. */
export type Slice = Exclude<keyof LiveChange['changed'], 'pits'>;
export interface Changed {
  readonly slices: readonly Slice[];
  readonly pits: readonly PitId[] | 'all';
}

const changes = (slices: readonly Slice[], pits: Changed['pits'] = []): Changed => ({ slices, pits });
type Changes = { readonly [K in EventKind]: (event: EventOf<K>) => Changed };

/**
 * What each event changes on the screens by itself; what it causes comes with the events that it causes. With each
 * minute whatever hangs on the time alone is sent: who is due to be there, what is left to burn, whether the shift is over.
 */
const CHANGES: Changes = {
  'yard-set-up': () => changes(['yard']),
  'pit-set-up': ({ pitId }) => changes(['wood'], [pitId]),
  'crew-set-up': () => changes(['people', 'shift']),
  'shift-planned': () => changes(['shift', 'tasks', 'plan', 'wood'], 'all'),
  'presence-reported': () => changes(['shift']),
  'break-reported': () => changes(['shift']),
  'task-added': () => changes(['tasks']),
  'task-finished': () => changes(['tasks']),
  'work-pinned': () => changes([]),
  'handover-signed': () => changes([]),
  'check-recorded': ({ pitId }) => changes(['wood'], [pitId]),
  'readings-recorded': () => changes([]),
  'gateway-changed': () => changes([]),
  'clock-stepped': () => changes([]),
  'learned-set-back': ({ pitId }) => changes([], [pitId]),
  'weather-recorded': () => changes(['weather']),
  'lot-changed': () => changes(['wood']),
  'wood-moved': () => changes(['wood']),
  'cook-changed': () => changes(['cooks']),
  'food-recorded': () => changes([]),
  'food-judged': () => changes(['cooks']),
  'service-changed': () => changes(['services']),
  'alarm-changed': () => changes(['alarms']),
  'minute-passed': () => changes(['shift', 'tasks', 'plan', 'wood', 'cooks', 'services'], 'all'),
  'fire-estimated': ({ pitIds }) => changes([], pitIds),
  'due-moved': ({ pitIds }) => changes([], pitIds),
  'plan-repaired': () => changes(['plan', 'shift']),
};

const changedBy = <K extends EventKind>(event: EventOf<K>): Changed => (CHANGES[event.kind as K] as (event: EventOf<K>) => Changed)(event);

/** What all of these events change together. */
export function changedByAll(events: readonly YardEvent[]): Changed {
  const each = events.map((event) => changedBy(event));
  return {
    slices: [...new Set(each.flatMap(({ slices }) => slices))],
    pits: each.some(({ pits }) => pits === 'all') ? 'all' : [...new Set(each.flatMap(({ pits }) => pits as readonly PitId[]))],
  };
}
