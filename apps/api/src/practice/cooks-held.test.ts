import type { CookView } from '@stokehold/domain/contract';
import { type CookId, epochS, HOUR_S, later, toIso } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { CooksHeld } from './cooks-held.js';

const ON = epochS(1_800_000_000);
const at = (hours: number) => later(ON, hours * HOUR_S);
const cook = (id: string, [p10, p50, p90, p95]: readonly [number, number, number, number | null], more: Partial<CookView> = {}): CookView => ({
  id: id as CookId, cut: 'Brisket', shape: 'slab', pieces: 2, weightKg: 12, serviceId: null, comesOffAt: null, mix: [], onAt: toIso(ON), offAt: null, yieldKg: null, lies: [],
  forecast: { madeAt: toIso(ON), p10At: toIso(at(p10)), p50At: toIso(at(p50)), p90At: toIso(at(p90)), p95At: p95 === null ? null : toIso(at(p95)), neverFrac: 0, phase: 'warming', coreC: 5, wrapAt: null, hotYieldFrac: null, problem: null },
  ...more,
});

it('counts, by thirds of each cook, the done times that held the true one: worked by hand', () => {
  const held = new CooksHeld();
  held.note([cook('a', [8, 10, 12, 13]), cook('b', [8, 9, 9.5, 9.8])], at(1)); // both are done at 10: a inside, b after p95
  held.note([cook('a', [9.5, 10.5, 11, 12])], at(4)); // inside, half an hour off
  held.note([cook('a', [10.1, 10.2, 10.3, null])], at(9)); // earlier than was said; p95 never
  expect(held.report(() => at(10)).cooks).toEqual([
    { third: 1, cooks: 2, looks: 2, insideFrac: 0.5, afterP95Frac: 0.5, bandHours: 4, offMinutes: 60 },
    { third: 2, cooks: 1, looks: 1, insideFrac: 1, afterP95Frac: 0, bandHours: 1.5, offMinutes: 30 },
    { third: 3, cooks: 1, looks: 1, insideFrac: 0, afterP95Frac: 0, bandHours: 0.2, offMinutes: 12 },
  ]);
});

it('a cook that is off, one without a forecast, one that was done already and one without a truth count for nothing', () => {
  const held = new CooksHeld();
  const { forecast: _none, ...unsaid } = cook('d', [8, 10, 12, 13]);
  held.note([cook('a', [8, 10, 12, 13], { offAt: toIso(at(1)) }), cook('b', [8, 10, 12, 13]), cook('c', [8, 10, 12, 13]), unsaid], at(2));
  expect(held.report((id) => (id === 'b' ? at(1.5) : undefined)).cooks).toEqual([]);
});
