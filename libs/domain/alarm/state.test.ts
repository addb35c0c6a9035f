import { describe, expect, it } from 'vitest';
import { epochS, type PersonId } from '../quantity/index.js';
import { type AlarmState, type AlarmStep, calls, conditionHolds, NORMAL, type Shelf, type Standing, standingAfter, STEP_KINDS, type StepKind } from './state.js';

const SHELF: Shelf = { until: epochS(1_800_000_000), by: 'p' as PersonId, way: 'timed' };
const stepOf = (kind: StepKind, way: Shelf['way'] = 'timed'): AlarmStep =>
  kind === 'shelved' ? { kind, shelf: { ...SHELF, way } } : kind === 'suppressed' ? { kind, by: 'after-check' } : { kind };
const STEPS: readonly AlarmStep[] = [...STEP_KINDS.map((kind) => stepOf(kind)), stepOf('shelved', 'one-shot')];
const STATES: readonly AlarmState[] = ['normal', 'unacknowledged', 'acknowledged', 'returned-unacknowledged'];

/** Every standing that can be reached from normal, found by walking every step from every one: the whole machine. */
function reachable(): Standing[] {
  const found = new Map([[JSON.stringify(NORMAL), NORMAL]]);
  for (const standing of found.values()) {
    for (const step of STEPS) {
      const after = standingAfter(standing, step);
      found.set(JSON.stringify(after), after);
    }
  }
  return [...found.values()];
}
const all = reachable();
const everyStep = all.flatMap((before) => STEPS.map((step) => ({ before, step, after: standingAfter(before, step) })));

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
  expect(standingAfter({ ...NORMAL, state }, { kind: 'acknowledged' }).state !== state).toBe(!acknowledged);
});

describe('over every step of every standing that can be reached', () => {
  it('the machine is as large as its parts: three states, each plain, shelved in two ways, suppressed, or both; and normal', () => {
    const returnedSuppressed = all.filter(({ state, suppressedBy }) => state === 'returned-unacknowledged' && suppressedBy).length;
    expect(new Set(all.map(({ state }) => state))).toEqual(new Set(STATES));
    expect(all).toHaveLength(1 + 3 * 3 * 2);
    expect(returnedSuppressed).toBe(3);
  });
  it('acknowledging never clears the condition, and nothing but its beginning and its end changes it', () => {
    for (const { before, step, after } of everyStep) {
      const expected = step.kind === 'condition-began' ? true : step.kind === 'condition-ended' ? false : conditionHolds(before.state);
      expect({ before, step, holds: conditionHolds(after.state) }).toEqual({ before, step, holds: expected });
    }
  });
  it('a shelf always has an end and an owner', () => {
    for (const { after } of everyStep) if (after.shelf) expect(after.shelf).toMatchObject({ until: SHELF.until, by: SHELF.by });
  });
  it('a shelf or a suppression that ends while the condition is true gives unacknowledged', () => {
    for (const { before, step, after } of everyStep) {
      const ended = (step.kind === 'shelf-ended' && before.shelf) || (step.kind === 'suppression-ended' && before.suppressedBy);
      if (ended && conditionHolds(before.state)) expect({ before, step, state: after.state }).toEqual({ before, step, state: 'unacknowledged' });
    }
  });
  it('no path leads from true to normal without the condition turning false', () => {
    for (const { before, step, after } of everyStep) if (conditionHolds(before.state) && after.state === 'normal') expect(step.kind).toBe('condition-ended');
  });
  it('normal is quiet of itself: nothing shelves or suppresses it, and nothing of that outlives the alarm', () => {
    for (const { after } of everyStep) if (after.state === 'normal') expect(after).toEqual(NORMAL);
  });
  it('what is shelved or suppressed does not call, and one that is neither calls until somebody takes note', () => {
    for (const standing of all) expect(calls(standing)).toBe(standing.state === 'unacknowledged' && !standing.shelf && !standing.suppressedBy);
  });
  it('a one-shot shelf does not outlive its condition', () => {
    for (const { step, after } of everyStep) if (step.kind === 'condition-ended') expect(after.shelf?.way).not.toBe('one-shot');
  });
});

it('an alarm that nobody took note of is never back to normal by the end of its condition alone, unless it never called', () => {
  const plain = { ...NORMAL, state: 'unacknowledged' as const };
  expect(standingAfter(plain, { kind: 'condition-ended' }).state).toBe('returned-unacknowledged');
  expect(standingAfter({ ...plain, suppressedBy: 'after-check' }, { kind: 'condition-ended' })).toEqual(NORMAL);
});

it('a condition that comes back, and a reminder, ask for hands again', () => {
  expect(standingAfter({ ...NORMAL, state: 'returned-unacknowledged' }, { kind: 'condition-began' }).state).toBe('unacknowledged');
  expect(standingAfter({ ...NORMAL, state: 'acknowledged' }, { kind: 'reminder-due' }).state).toBe('unacknowledged');
});

it('every standing can be left for normal again', () => {
  for (const from of all) {
    const found = new Set([JSON.stringify(from)]);
    for (const text of found) for (const step of STEPS) found.add(JSON.stringify(standingAfter(JSON.parse(text) as Standing, step)));
    expect(found.has(JSON.stringify(NORMAL))).toBe(true);
  }
});
