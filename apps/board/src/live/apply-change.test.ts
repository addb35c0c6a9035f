import type { LiveChange, YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { applyChange } from './apply-change.js';

const clock = { now: '2027-03-13T08:14:00Z', speed: 1 };
const pit = (id: string, name = id) => ({ pit: { id, name } });
const state = { seq: 7, clock, pits: [pit('cedar'), pit('alder')], tasks: ['haul'], people: ['odell'] } as unknown as YardState;
const change = (seq: number, changed: object, more: object = {}) => ({ seq, clock, event: 'check-recorded', changed, ...more }) as unknown as LiveChange;

describe('a live change', () => {
  it('puts whole slices in place of the old ones and leaves the others', () => {
    const next = applyChange(state, change(8, { tasks: [] }));
    expect(next).toMatchObject({ seq: 8, tasks: [], people: ['odell'] });
    expect(state.seq).toBe(7);
  });

  it('of the pits replaces those that changed, in their places, and adds new ones at the end', () => {
    const next = applyChange(state, change(8, { pits: [pit('larch'), pit('cedar', 'Cedar II')] }));
    expect(next).toMatchObject({ pits: [pit('cedar', 'Cedar II'), pit('alder'), pit('larch')] });
  });

  it('takes away pits that are gone', () => {
    expect(applyChange(state, change(8, {}, { pitsGone: ['cedar'] }))).toMatchObject({ pits: [pit('alder')] });
  });

  it('a number seen before changes nothing', () => {
    expect(applyChange(state, change(7, { tasks: [] }))).toBe(state);
  });

  it('a missing number is a gap', () => {
    expect(applyChange(state, change(9, { tasks: [] }))).toBe('gap');
  });
});
