import { describe, expect, it } from 'vitest';
import { liesWhilePlacing, placed, placingOf, spot } from './placing.js';

const larch = 'larch' as never;
describe('placing a cook by hand', () => {
  it('reads the zones that hold something', () => {
    expect(placed({ [spot('larch', 0)]: '', [spot('larch', 1)]: '3', [spot('cedar', 2)]: ' 2 ', [spot('cedar', 0)]: '0' }, 6)).toEqual({
      kind: 'lies', pieces: 5, lies: [{ pitId: 'larch', zone: 1, pieces: 3 }, { pitId: 'cedar', zone: 2, pieces: 2 }],
    });
  });
  it('says which field it cannot read, and when more would lie there than the cook has', () => {
    expect(placed({ [spot('larch', 1)]: 'some', [spot('larch', 2)]: '1.5' }, 6)).toEqual({ kind: 'unreadable', spots: ['larch/1', 'larch/2'] });
    expect(placed({ [spot('larch', 1)]: '4', [spot('larch', 2)]: '3' }, 6)).toEqual({ kind: 'too-many', pieces: 7 });
  });
  it('begins with where it lies now', () => {
    expect(placingOf({ lies: [{ pitId: larch, zone: 2, pieces: 4 }] })).toEqual({ 'larch/2': '4' });
  });
  it('draws the others as they lie and this one as it is typed', () => {
    const cook = (id: string, shape: string, zone: number, offAt: string | null = null) => ({ id, shape, offAt, lies: [{ pitId: larch, zone, pieces: 2 }] }) as never;
    const own = cook('own', 'slab', 0);
    const state = { cooks: [own, cook('other', 'ribs', 1), cook('gone', 'bird', 2, '2027-06-06T02:00:00Z')] };
    expect(liesWhilePlacing(state, own, { 'larch/2': '3', 'cedar/0': '1' }, larch)).toEqual([
      { zone: 1, pieces: 2, shape: 'ribs' }, { zone: 2, pieces: 3, shape: 'slab' },
    ]);
  });
});
