import { expect, it } from 'vitest';
import { weekSums } from './week-sums.js';

const line = (readyBy: string, woodCents: number) => ({ readyBy, woodCents, crewCents: 100, meatCents: 1000, totalCents: woodCents + 1100 }) as never;

it('a week runs from Monday to Sunday, and an idle week stands as nothing', () => {
  // 2027-03-01 is a Monday.
  const weeks = weekSums([line('2027-03-01T00:00:00Z', 10), line('2027-03-07T23:00:00Z', 20), line('2027-03-15T12:00:00Z', 5)]);
  expect(weeks.map(({ mondayMs, woodCents, totalCents, services }) => [new Date(mondayMs).toISOString().slice(0, 10), woodCents, totalCents, services])).toEqual([
    ['2027-03-01', 30, 2230, 2], ['2027-03-08', 0, 0, 0], ['2027-03-15', 5, 1105, 1],
  ]);
});
it('no service, no week', () => {
  expect(weekSums([])).toEqual([]);
});
