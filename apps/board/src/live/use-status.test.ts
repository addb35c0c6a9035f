import type { HouseStatus, Problem } from '@stokehold/domain/contract';
import { expect, it } from 'vitest';
import { NoAnswer, Refused } from './refused.js';
import { seenAt } from './use-status.js';

const status = { at: '2027-01-15T23:00:00Z', version: '1.0.0', runsSince: '2027-01-15T20:00:00Z', parts: [] } satisfies HouseStatus;
const refused = (code: Problem['code'], of: number) => new Refused({ type: '', title: '', status: of, detail: '', instance: '', code });

it.each([
  { what: 'an answer of just now', of: { status, answeredMs: 100_000, error: null }, is: { lost: undefined, ageS: 4 } },
  { what: 'no answer since', of: { status, answeredMs: 40_000, error: new NoAnswer('x') }, is: { lost: 'server-away', ageS: 64 } },
  { what: 'a question that hangs', of: { status, answeredMs: 91_999, error: null }, is: { lost: 'server-away', ageS: 12 } },
  { what: 'a question that is under way', of: { status, answeredMs: 92_000, error: null }, is: { lost: undefined, ageS: 12 } },
  { what: 'a database that is away', of: { status, answeredMs: 94_000, error: refused('database-away', 503) }, is: { lost: 'database-lost', ageS: 10 } },
  { what: 'a house that asks for patience', of: { status, answeredMs: 94_000, error: refused('too-many-requests', 429) }, is: { lost: undefined, ageS: 10 } },
  { what: 'nothing yet', of: { status: undefined, answeredMs: 0, error: null }, is: { lost: undefined, ageS: undefined } },
  { what: 'never an answer', of: { status: undefined, answeredMs: 0, error: new NoAnswer('x') }, is: { lost: 'server-away', ageS: undefined } },
])('$what is told as such, with its age', ({ of, is }) => {
  const { lost, ageS } = seenAt(104_000, of);
  expect({ lost, ageS }).toEqual(is);
});

it('a no to the question itself is no lost server', () => {
  const no = refused('not-allowed', 403);
  expect(seenAt(1, { status: undefined, answeredMs: 0, error: no }).lost).toBe(no);
});
