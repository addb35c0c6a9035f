/** States by IEC 62682 (ISA-18.2): whether the condition holds, and whether somebody has taken note. */
export type AlarmState = 'normal' | 'unacknowledged' | 'acknowledged' | 'returned-unacknowledged';
/** What can happen to an alarm. `reminder-due`: somebody took note long ago and the condition still holds. */
export type AlarmStep = 'condition-began' | 'condition-ended' | 'acknowledged' | 'reminder-due';
export type AlarmKind = 'past-latest-safe' | 'bed-nearly-out' | 'wood-short';

const AFTER: Readonly<Record<AlarmState, Readonly<Partial<Record<AlarmStep, AlarmState>>>>> = {
  normal: { 'condition-began': 'unacknowledged' },
  unacknowledged: { acknowledged: 'acknowledged', 'condition-ended': 'returned-unacknowledged' },
  acknowledged: { 'condition-ended': 'normal', 'reminder-due': 'unacknowledged' },
  'returned-unacknowledged': { 'condition-began': 'unacknowledged', acknowledged: 'normal' },
};

/**
 * The state of an alarm after a step; a step that means nothing in this state leaves it as it is.
 *
 * Source: [IEC62682] alarm states and transitions, shelving and suppression left out. Held to alarm.test.ts, every state and step.
 */
export const alarmAfter = (state: AlarmState, step: AlarmStep): AlarmState => AFTER[state][step] ?? state;

/** Whether the condition holds in this state. */
export const conditionHolds = (state: AlarmState): boolean => state === 'unacknowledged' || state === 'acknowledged';

/** What the kinds are worth, the most pressing first. */
export const ALARM_PRIORITIES = ['highest', 'high', 'medium'] as const;

/**
 * Each kind's priority, and how long after somebody took note it comes back while its condition still holds, s.
 * Source: our own choice; a coal bed once lost costs the night.
 */
export const ALARM_KINDS: Readonly<Record<AlarmKind, { readonly priority: (typeof ALARM_PRIORITIES)[number]; readonly remindAfterS?: number }>> = {
  'bed-nearly-out': { priority: 'highest', remindAfterS: 600 },
  'past-latest-safe': { priority: 'high', remindAfterS: 600 },
  'wood-short': { priority: 'medium' },
};
