import { expect, it } from 'vitest';
import type { Problem, YardState } from '@stokehold/domain/contract';
import '../words/refusal.js';
import { figuresOf } from '../units/figures.js';
import { sayIn } from '../words/words.js';
import { refusalInWords } from './refusal-words.js';

const state = { people: [{ id: 'p1', name: 'Ana' }], pits: [{ pit: { id: 'q1', name: 'Larch' } }] } as unknown as YardState;
const said = (code: Problem['code'], values?: Problem['values'], language: 'en' | 'es' = 'en') =>
  refusalInWords({ code, ...(values && { values }) }, { say: sayIn(language, 'refusal'), figures: figuresOf({ units: 'us', timeZone: 'UTC', language }), state });

it('a refusal names the person or the pit that it is about', () => {
  expect(said('person-on-two-shifts', { personId: 'p1' })).toBe('Somebody would be on two shifts at once. Take them off one. It is about Ana.');
  expect(said('light-outside-shift', { pitId: 'q1' }, 'es')).toMatch(/Se trata de Larch\.$/);
  expect(said('name-taken', { name: 'Oak' })).toMatch(/It is about Oak\.$/);
});
it('a refusal says the figures it speaks of', () => {
  expect(said('lot-empty', { left: 4 })).toMatch(/4 left\.$/);
  expect(said('pieces-more-than-cook', { placed: 9, pieces: 6 })).toMatch(/9 placed, 6 in all\.$/);
  expect(said('check-in-the-future', { aheadS: 100 })).toMatch(/2 minutes ahead\.$/);
  expect(said('task-done-already', { doneAt: '2027-01-16T02:10:00Z' })).toMatch(/at 02:10\.$/);
});
it('a plan that would break a rule says which', () => {
  expect(said('plan-breaks-rule', { rule: 'skill' })).toBe('The plan would break a rule with this, so it stays as it was. They do not have the skill for it.');
  expect(said('plan-breaks-rule', { rule: 'latest-safe', lateS: 600 }, 'es')).toMatch(/Un fuego pasaría de lo más tarde\. 10 min después de lo más tarde\.$/);
});
it('what nobody has a name for is left out', () => {
  expect(said('shift-overlaps', { shiftId: 'x' })).toBe('Another shift runs at that time. Change the times.');
  expect(said('person-on-two-shifts', { personId: 'gone' })).toBe('Somebody would be on two shifts at once. Take them off one.');
});
