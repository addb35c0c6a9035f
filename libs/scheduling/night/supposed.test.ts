import { later, type PersonId, type PitId } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { validateRounds, type RoundProblem } from '../rounds/index.js';
import { supposed } from './supposed.js';

const FROM = 1_800_000_000 as RoundProblem['from'];
const at = (minutes: number) => later(FROM, minutes * 60);
const [ana, bo] = ['ana', 'bo'] as PersonId[] as [PersonId, PersonId];
const pit = 'pit' as PitId;
const check = { kind: 'check' as const, pitId: pit, nth: 1 };
const person = (id: PersonId, from = 0) => ({
  id, startsAt: at(from), endsAt: at(240), skills: ['fire'], atPlace: 'wood', freeFrom: at(from), breaks: [{ id: `rest-${id}`, lengthS: 600, earliestAt: at(100), latestAt: at(140) }],
});
const problem: RoundProblem = {
  from: FROM, until: at(240), places: ['wood', pit, 'other'], walkS: [[0, 60, 60], [60, 0, 60], [60, 60, 0]], people: [person(ana), person(bo, 60)], tasks: [],
  pits: [{ id: pit, place: pit, weight: 1, checkS: 300, gap: { earliestS: 1080, dueS: 1800, latestSafeS: 2400 }, first: { earliestAt: at(5), dueAt: at(10), latestSafeAt: at(20) } }],
  frozen: [{ work: check, personIds: [ana], startsAt: at(0), endsAt: at(5) }], pins: [{ work: { ...check, nth: 2 }, personIds: [ana] }], promises: [],
};
const of = (what: Parameters<typeof supposed>[1]) => {
  const made = supposed(problem, what);
  expect(validateRounds(made)).toMatchObject({ ok: true });
  return made;
};

it('somebody less is away from then on, and what they were at is free again', () => {
  const made = of({ code: 'person-less', personId: ana, fromAt: at(0) });
  expect(made.people[0]?.absent).toEqual([{ from: at(0), until: at(240) }]);
  expect([made.frozen, made.pins]).toEqual([[], []]);
  expect(of({ code: 'person-less', personId: ana, fromAt: at(30) }).frozen).toEqual(problem.frozen);
});
it('somebody late is away from now, or from when they should have come', () => {
  expect(of({ code: 'person-late', personId: ana, byS: 1200 }).people[0]?.absent).toEqual([{ from: at(0), until: at(20) }]);
  expect(of({ code: 'person-late', personId: bo, byS: 1200 }).people[1]?.absent).toEqual([{ from: at(60), until: at(80) }]);
});
it('one pit more is lit, and looked at a gap later', () => {
  const made = of({ code: 'pit-more', pitId: 'other' as PitId, lightAt: at(30) });
  // by hand: lit from 30 to 40, then 18, 30 and 40 min
  expect(made.pits[1]?.first).toEqual({ earliestAt: at(58), dueAt: at(70), latestSafeAt: at(80) });
  expect(made.tasks.map(({ kind, place, dueAt }) => [kind, place, dueAt])).toEqual([['light', 'other', at(30)]]);
});
it('a break moves to its minute, and work to other hands in place of the decision before', () => {
  expect(of({ code: 'break-moved', breakId: 'rest-bo', startsAt: at(90) }).people[1]?.breaks).toEqual([{ id: 'rest-bo', lengthS: 600, earliestAt: at(90), latestAt: at(90) }]);
  expect(of({ code: 'work-given', pin: { work: { ...check, nth: 2 }, personIds: [bo] } }).pins).toEqual([{ work: { ...check, nth: 2 }, personIds: [bo] }]);
});
it('what the night does not know changes nothing', () => {
  expect(of({ code: 'pit-more', pitId: 'nowhere' as PitId, lightAt: at(30) })).toEqual(problem);
  expect(of({ code: 'break-moved', breakId: 'none', startsAt: at(90) })).toEqual(problem);
});
