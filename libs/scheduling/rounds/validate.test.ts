import { expect, it } from 'vitest';
import type { PersonId } from '@stokehold/domain/quantity';
import { handBreak, handNight, handPerson, handPit, handTask, minute } from './hand-night.js';
import { validateRounds, type RoundProblem } from './index.js';

const people = [handPerson('ana', { skills: ['cook'] }), handPerson('ben')];
const haul = { kind: 'task', taskId: 'haul-1' as never } as const;

it.each<{ code: string; parts: Partial<RoundProblem> }>([
  { code: 'horizon-empty', parts: { until: minute(0) } },
  { code: 'not-whole-seconds', parts: { pits: [{ ...handPit('pit-1', 10), checkS: 299.5 }] } },
  { code: 'not-whole-seconds', parts: { pits: [{ ...handPit('pit-1', 10), checkS: NaN }] } },
  { code: 'same-id-twice', parts: { pits: [handPit('pit-1', 10), handPit('pit-1', 20)] } },
  { code: 'unknown-place', parts: { pits: [handPit('pit-1', 10, { place: 'nowhere' })] } },
  { code: 'walking-table-not-square', parts: { walkS: [[0, 60]] } },
  { code: 'walking-negative', parts: { walkS: [[-1]] } },
  { code: 'shift-empty', parts: { people: [handPerson('ana', { from: 10, until: 10 })] } },
  { code: 'shifts-overlap', parts: { people: [handPerson('ana'), handPerson('ana', { from: 60 })] } },
  { code: 'absence-backwards', parts: { people: [handPerson('ana', { absent: [{ from: minute(60), until: minute(50) }] })] } },
  { code: 'break-outside-shift', parts: { people: [handPerson('ana', { breaks: [handBreak('rest', 180, 220)] })] } },
  { code: 'break-backwards', parts: { people: [handPerson('ana', { breaks: [handBreak('rest', 100, 90)] })] } },
  { code: 'windows-out-of-order', parts: { tasks: [handTask('haul-1', 60, 10, { earliest: 90 })] } },
  { code: 'length-out-of-range', parts: { tasks: [handTask('haul-1', 60, 0)] } },
  { code: 'weight-out-of-range', parts: { pits: [handPit('pit-1', 10, { weight: 0 })] } },
  { code: 'too-many-checks', parts: { pits: [handPit('pit-1', 1, { gap: 0.4, check: 1 })] } },
  { code: 'parameter-out-of-range', parts: { parameters: { gapFrac: 1.5 } } },
  { code: 'unknown-work', parts: { pins: [{ work: haul }] } },
  { code: 'unknown-person', parts: { tasks: [handTask('haul-1', 60, 10)], pins: [{ work: haul, personIds: ['cleo' as PersonId] }] } },
  { code: 'pin-against-rule', parts: { tasks: [handTask('haul-1', 60, 10, { skill: 'cook' })], pins: [{ work: haul, personIds: ['ben' as PersonId] }] } },
  { code: 'pin-against-rule', parts: { tasks: [handTask('haul-1', 60, 10, { earliest: 30 })], pins: [{ work: haul, startsAt: minute(20) }] } },
  { code: 'frozen-overlaps', parts: { tasks: [handTask('haul-1', 60, 10), handTask('haul-2', 60, 10)], frozen: [
    { work: haul, personIds: ['ana' as PersonId], startsAt: minute(0), endsAt: minute(10) },
    { work: { kind: 'task', taskId: 'haul-2' as never }, personIds: ['ana' as PersonId], startsAt: minute(5), endsAt: minute(15) },
  ] } },
])('a problem is refused by name: $code', ({ code, parts }) => {
  const found = validateRounds(handNight({ people, ...parts }));
  expect(found.ok ? 'accepted' : found.refusal.code).toBe(code);
});

it('a night without pits, and one without people, is no mistake', () => {
  expect(validateRounds(handNight({ people })).ok).toBe(true);
  expect(validateRounds(handNight({ pits: [handPit('pit-1', 10)] })).ok).toBe(true);
});
