import { fromIso } from '@stokehold/domain/quantity';
import type { RosterView, ShiftView } from '@stokehold/domain/contract';
import { expect, it } from 'vitest';
import { failingHours, firstShown, mostNeeded } from './tomorrow.js';

const iso = (hour: number) => `2027-06-06T${String(hour).padStart(2, '0')}:00:00Z`;
const shift = (id: string, hour: number) => ({ id, startsAt: iso(hour) }) as unknown as ShiftView;
const hour = (at: number, more: object = {}) => ({
  fromAt: iso(at), untilAt: iso(at + 1), needed: 2, fewest: 1, present: 2, bySkill: [], loadFrac: 0.7, fails: false, missingPeople: 0, mend: 'none', ...more,
}) as RosterView['hours'][number];

it('the next night to come is shown first, else the one that runs', () => {
  expect(firstShown([shift('b', 20), shift('a', 1)], fromIso(iso(10)))).toBe('b');
  expect(firstShown([shift('a', 1)], fromIso(iso(10)))).toBe('a');
  expect(firstShown([], 0)).toBeUndefined();
});
it('the most people that an hour needs, the first such hour', () => {
  expect(mostNeeded({ hours: [hour(1), hour(2, { needed: 4, fewest: 3 }), hour(3, { needed: 4 })] })).toEqual({ needed: 4, from: iso(2), fewest: 3 });
  expect(mostNeeded({ hours: [] })).toBeUndefined();
});
it('failing hours are told for everybody, or for the skill that is missing where enough are there', () => {
  const hours = [hour(1), hour(2, { fails: true, needed: 3, missingPeople: 1, mend: 'call-people' }), hour(3, { fails: true, bySkill: [{ skill: 'fire', needed: 2, present: 1 }], mend: 'call-people' })];
  expect(failingHours({ hours }).map(({ fromAt, missingPeople, skill }) => [fromAt, missingPeople, skill])).toEqual([[fromIso(iso(2)), 1, null], [fromIso(iso(3)), 1, 'fire']]);
});
