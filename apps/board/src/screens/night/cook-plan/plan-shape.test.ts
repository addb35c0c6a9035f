import { expect, it } from 'vitest';
import { droppedAt, shapeOf, shortHours } from './plan-shape.js';

const at = (hour: number) => new Date(Date.UTC(2027, 5, 6) + hour * 3_600_000).toISOString();
const start = (cookId: string, pitId: string, on: number, off: number) => ({ cookId, pitId, onAt: at(on), offBy: at(off), likelyOffAt: at(off - 1), reason: 'least-cost' }) as never;
const plan = {
  burns: [{ pitId: 'bess', lightAt: at(1), firstOnAt: at(2), lastOffBy: at(11) }],
  starts: [start('a', 'bess', 2, 10), start('b', 'bess', 5, 9), start('c', 'bess', 10, 11)],
  services: [{ serviceId: 'lunch', readyBy: at(11) }],
} as never;

it('bars that meet stand one below the other, one that follows takes the first row again', () => {
  const shape = shapeOf(plan);
  expect(shape.pits[0]).toMatchObject({ rows: 2, fire: { from: 0, width: 1 } });
  expect(shape.pits[0]!.bars.map(({ cookId, row }) => [cookId, row])).toEqual([['a', 0], ['b', 1], ['c', 0]]);
  expect(shape.pits[0]!.bars[0]!.from).toBeCloseTo(0.1, 12);
  expect(shape.services).toEqual([{ serviceId: 'lunch', at: 1 }]);
  expect(shape.hours).toHaveLength(11);
  expect(shapeOf(plan, 4).hours.map(({ at: place }) => Math.round(place * 10))).toEqual([0, 3, 6, 9]);
});
it('a bar dropped a tenth of ten hours later goes on an hour later; near a quarter hour it snaps', () => {
  const shape = shapeOf(plan);
  expect(droppedAt(at(2), 0.1, shape)).toBe(Date.parse(at(3)));
  expect(droppedAt(at(2), 0.11, shape)).toBe(Date.parse(at(3)));
  expect(droppedAt(at(2), -0.013, shape)).toBe(Date.parse(at(1.75)));
});
it('hours that follow each other and fall short are told as one', () => {
  const hour = (h: number, neededS: number, thereS: number) => ({ from: at(h), neededS, thereS });
  expect(shortHours({ crewHours: [hour(0, 10, 20), hour(1, 30, 20), hour(2, 25, 20), hour(3, 5, 20), hour(4, 30, 20)] })).toEqual([
    { fromMs: Date.parse(at(1)), untilMs: Date.parse(at(3)), neededS: 55, thereS: 40 }, { fromMs: Date.parse(at(4)), untilMs: Date.parse(at(5)), neededS: 30, thereS: 20 },
  ]);
});
