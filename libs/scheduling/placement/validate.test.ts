import { expect, it } from 'vitest';
import { handGroup, handPit, handZone } from './hand-pit.js';
import { validatePlacement } from './index.js';

const zones = [handZone(1), handZone(2)];

it.each([
  { what: 'a piece heavier than the pit bears', problem: handPit(zones, [handGroup('a', { pieceKg: 60 })]), code: 'piece-heavier-than-pit-bears' },
  { what: 'a piece larger than any zone', problem: handPit(zones, [handGroup('a', { pieceAreaM2: 0.5 })]), code: 'piece-larger-than-any-zone' },
  { what: 'zones that overlap on one grate', problem: handPit([handZone(1), handZone(2, { fromM: 0.9 })], []), code: 'zones-overlap' },
  { what: 'weight 0', problem: handPit(zones, [handGroup('a', { pieceKg: 0 })]), code: 'weight-not-above-zero' },
  { what: 'a weight that is no number', problem: handPit(zones, [handGroup('a', { pieceKg: NaN })]), code: 'weight-not-above-zero' },
  { what: 'a zone without grate', problem: handPit([handZone(1, { areaM2: 0 })], []), code: 'zone-empty' },
  { what: 'a pit without zones', problem: handPit([], []), code: 'no-zones' },
  { what: 'thirteen cooks', problem: handPit(zones, Array.from({ length: 13 }, (_, i) => handGroup(`${i}`))), code: 'too-many' },
  { what: 'one name for two zones', problem: handPit([handZone(1), handZone(2, { id: '1' })], []), code: 'same-id-twice' },
  { what: 'off before on', problem: handPit(zones, [handGroup('a', { onS: 100, offS: 100 })]), code: 'off-before-on' },
  { what: 'half a piece', problem: handPit(zones, [handGroup('a', { pieces: 1.5 })]), code: 'number-out-of-range' },
  { what: 'a price below 0', problem: handPit(zones, [], { parameters: { turnS: -1 } }), code: 'number-out-of-range' },
])('$what is refused as $code', ({ problem, code }) => {
  expect(validatePlacement(problem)).toMatchObject({ ok: false, refusal: { code } });
});

it('zones of two grates may lie above each other', () => {
  expect(validatePlacement(handPit([handZone(1), handZone(1, { id: 'upper', grate: 1 })], [handGroup('a')])).ok).toBe(true);
});
