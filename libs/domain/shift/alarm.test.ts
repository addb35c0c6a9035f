import { expect, it } from 'vitest';
import { alarmAfter, type AlarmState, type AlarmStep, conditionHolds } from './alarm.js';

const STATES: readonly AlarmState[] = ['normal', 'unacknowledged', 'acknowledged', 'returned-unacknowledged'];
const STEPS: readonly AlarmStep[] = ['condition-began', 'condition-ended', 'acknowledged', 'reminder-due'];
const everyStep = STATES.flatMap((state) => STEPS.map((step) => ({ state, step, after: alarmAfter(state, step) })));

// The four states of IEC 62682 / ISA-18.2 with condition and acknowledgement, as the standard's table has them
// (public descriptions of it; the standard itself is sold).
it.each([
  { state: 'normal', condition: false, acknowledged: true },
  { state: 'unacknowledged', condition: true, acknowledged: false },
  { state: 'acknowledged', condition: true, acknowledged: true },
  { state: 'returned-unacknowledged', condition: false, acknowledged: false },
] as const)('$state: the condition holds: $condition, somebody took note: $acknowledged', ({ state, condition, acknowledged }) => {
  expect(conditionHolds(state)).toBe(condition);
  // Taking note changes exactly the states in which nobody had.
  expect(alarmAfter(state, 'acknowledged') !== state).toBe(!acknowledged);
});

it('only the beginning and the end of the condition change whether it holds: taking note never clears it', () => {
  for (const { state, step, after } of everyStep) {
    const expected = step === 'condition-began' ? true : step === 'condition-ended' ? false : conditionHolds(state);
    expect({ state, step, holds: conditionHolds(after) }).toEqual({ state, step, holds: expected });
  }
});

it('every walk of six steps reaches normal from a standing alarm only through the end of its condition', () => {
  let walks = 0;
  const walk = (state: AlarmState, ended: boolean, depth: number) => {
    if (state === 'normal') expect(ended).toBe(true);
    walks++;
    if (depth === 6 || state === 'normal') return;
    for (const step of STEPS) {
      const after = alarmAfter(state, step);
      walk(after, conditionHolds(after) ? false : ended || step === 'condition-ended', depth + 1);
    }
  };
  for (const start of ['unacknowledged', 'acknowledged'] as const) walk(start, false, 0);
  expect(walks).toBeGreaterThan(1000);
});

it('an alarm that nobody took note of is never back to normal by the end of its condition alone', () => {
  expect(alarmAfter('unacknowledged', 'condition-ended')).toBe('returned-unacknowledged');
  expect(alarmAfter('returned-unacknowledged', 'condition-ended')).toBe('returned-unacknowledged');
});

it('a condition that comes back, and a reminder, ask for hands again', () => {
  expect(alarmAfter('returned-unacknowledged', 'condition-began')).toBe('unacknowledged');
  expect(alarmAfter('acknowledged', 'reminder-due')).toBe('unacknowledged');
  for (const state of ['normal', 'unacknowledged', 'returned-unacknowledged'] as const) expect(alarmAfter(state, 'reminder-due')).toBe(state);
});

it('every state can be reached from normal, and normal again from every state', () => {
  const reachable = (from: AlarmState) => {
    const found = new Set<AlarmState>([from]);
    for (const state of found) for (const step of STEPS) found.add(alarmAfter(state, step));
    return found;
  };
  for (const state of STATES) expect(reachable(state)).toEqual(new Set(STATES));
});
