import { expect, it } from 'vitest';
import { drawnLies, handlingsAhead, liesByFire, toDoOn } from './loading-rows.js';

const placing = (cookId: string, zone: number, pieces: number) => ({ cookId, zone, pieces }) as never;
const cook = (id: string, lies: readonly (readonly [string, number, number])[], onAt: string | null = '2027-06-06T02:00:00Z') => ({ id, onAt, shape: 'slab', lies: lies.map(([pitId, zone, pieces]) => ({ pitId, zone, pieces })) }) as never;

it('pieces that lie in another zone are moved, those beside the pit are put', () => {
  expect(toDoOn('bess', { placings: [placing('a', 1, 3), placing('a', 2, 3)] }, [cook('a', [['bess', 0, 2], ['bess', 1, 1]])])).toEqual([
    { cookId: 'a', pieces: 2, from: 0, zone: 1 }, { cookId: 'a', pieces: 3, from: undefined, zone: 2 },
  ]);
});
it('nothing is to do where all lies as it should, and for a cook that is not on yet', () => {
  expect(toDoOn('bess', { placings: [placing('a', 1, 3), placing('b', 0, 2)] }, [cook('a', [['bess', 1, 3]]), cook('b', [], null)])).toEqual([]);
});
it('what lies on another pit is not asked for here', () => {
  expect(toDoOn('bess', { placings: [placing('a', 1, 3)] }, [cook('a', [['nell', 0, 3]])])).toEqual([]);
});
it('draws what should lie there, and leaves out a cook that is gone', () => {
  expect(drawnLies({ placings: [placing('a', 1, 3), placing('gone', 0, 1)] }, [cook('a', [])])).toEqual([{ zone: 1, pieces: 3, shape: 'slab' }]);
});
it('keeps a turn that is due for an hour, and no more than asked for', () => {
  const at = (time: string) => ({ at: `2027-06-06T${time}:00Z` }) as never;
  expect(handlingsAhead({ handlings: [at('01:00'), at('02:30'), at('03:30'), at('04:30')] }, Date.parse('2027-06-06T03:00:00Z'), 2)).toHaveLength(2);
});
it('tells food in the half next to the fire from food at the stack end and food on another pit', () => {
  const zones = [true, true, false].map((fireEnd, zone) => ({ zone, fireEnd })) as never;
  expect(liesByFire('bess', { zones }, [cook('a', [['bess', 1, 1]])])).toBe(true);
  expect(liesByFire('bess', { zones }, [cook('a', [['bess', 2, 1], ['nell', 0, 3]])])).toBe(false);
});
