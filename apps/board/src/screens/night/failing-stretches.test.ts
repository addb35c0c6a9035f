import { expect, it } from 'vitest';
import { failingStretches } from './failing-stretches.js';
import type { ShownHour } from './load-chart.js';

const hour = (at: number, more: Partial<ShownHour> = {}): ShownHour => ({ fromAt: at, untilAt: at + 1, loadFrac: 1.2, fails: true, missingPeople: 1, mend: { code: 'call-people' }, ...more });
const spans = (hours: readonly ShownHour[]) => failingStretches(hours).map(({ fromAt, untilAt, skill }) => [fromAt, untilAt, skill]);

it('hours that follow each other and lack the same are told as one', () => {
  expect(spans([hour(3), hour(2), hour(4), hour(6)])).toEqual([[2, 5, undefined], [6, 7, undefined]]);
});
it('another number of people, another skill or another mend is told apart', () => {
  expect(spans([hour(2), hour(3, { missingPeople: 2 }), hour(4, { mend: { code: 'move-tasks' } })])).toHaveLength(3);
  expect(spans([hour(2), hour(2, { skill: 'fire' }), hour(3), hour(3, { skill: 'fire' })])).toEqual([[2, 4, undefined], [2, 4, 'fire']]);
});
it('hours that hold are not told', () => expect(spans([hour(2, { fails: false })])).toEqual([]));
