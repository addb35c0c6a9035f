import type { PitView, YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { firesByDue, lastPlace, myWork, nextFire, walkM } from './my-work.js';

const at = (minute: number) => new Date(Date.UTC(2027, 2, 13, 8, minute)).toISOString();
const fire = (id: string, dueMinute: number | null, checkedBy: readonly [string, number][] = []) =>
  ({
    pit: { id, name: id },
    tonight: { lightAt: at(0) },
    due: dueMinute === null ? null : { dueAt: at(dueMinute) },
    checks: checkedBy.map(([personId, minute]) => ({ personId, seenAt: at(minute) })),
  }) as unknown as PitView;
const check = (pitId: string, who: string, minute: number) => ({ work: { kind: 'check', pitId, nth: 0 }, people: [who], startsAt: at(minute) });
const state = {
  pits: [fire('cedar', 40, [['odell', 5]]), fire('alder', 20, [['odell', 10], ['bright', 12]]), fire('larch', 30), { ...fire('willow', 10), tonight: null }],
  tasks: [
    { id: 'haul', doneAt: null },
    { id: 'ash', doneAt: at(1) },
  ],
  plan: {
    assignments: [
      check('larch', 'odell', 30),
      check('alder', 'bright', 20),
      check('cedar', 'odell', 40),
      { work: { kind: 'task', taskId: 'haul' }, people: ['odell', 'bright'], startsAt: at(25) },
      { work: { kind: 'task', taskId: 'ash' }, people: ['odell'], startsAt: at(22) },
    ],
  },
} as unknown as YardState;

describe('my work', () => {
  it('is what the plan has for me, soonest first, without what is done', () => {
    expect(myWork(state, 'odell').map((work) => (work.kind === 'check' ? work.view.pit.id : work.kind))).toEqual(['task', 'larch', 'cedar']);
  });

  it('the fire to show is my next one, the one I chose, or, with none of mine, the one due first', () => {
    expect(nextFire(state, 'odell', undefined, new Set())?.pit.id).toBe('larch');
    expect(nextFire(state, 'odell', 'alder', new Set())?.pit.id).toBe('alder');
    expect(nextFire(state, 'marisol', undefined, new Set())?.pit.id).toBe('alder');
  });

  it('a fire just recorded is not asked for again, and a pit that rests tonight never is', () => {
    expect(nextFire(state, 'odell', undefined, new Set(['larch']))?.pit.id).toBe('cedar');
    expect(nextFire(state, 'odell', 'willow', new Set())?.pit.id).toBe('larch');
    expect(firesByDue(state).map((view) => view.pit.id)).toEqual(['alder', 'larch', 'cedar']);
  });

  it('the way begins at the fire where I was last', () => {
    expect(lastPlace(state, 'odell')?.pit.id).toBe('alder');
    expect(lastPlace(state, 'marisol')).toBeUndefined();
    // 3-4-5 triangle.
    expect(walkM({ xM: 1, yM: 1 }, { xM: 4, yM: 5 })).toBe(5);
  });
});
