import { expect, it } from 'vitest';
import { typeKEmfV } from './thermocouple.js';
import { shownTempC } from './shown.js';

const of = { a: 0.001129148, b: 0.000234125, c: 8.76741e-8 };

it('a converter that flags its input is believed', () => expect(shownTempC({ kind: 'fault', fault: 'open' })).toEqual({ ok: false, refusal: 'open' }));
it('a temperature is a temperature', () => expect(shownTempC({ kind: 'temp', tempC: 121 })).toEqual({ ok: true, value: 121 }));

// Signatures of faults: common practice, no source.
it.each([
  { kind: 'type-k', emfV: 0.07, coldJunctionTempC: 25 }, { kind: 'pt100', resistanceOhm: 1e6 }, { kind: 'thermistor', resistanceOhm: 5e6, of },
] as const)('an open $kind is open, never a temperature', (raw) => expect(shownTempC(raw)).toEqual({ ok: false, refusal: 'open' }));
it.each([{ kind: 'pt100', resistanceOhm: 2 }, { kind: 'thermistor', resistanceOhm: 1, of }] as const)('a short $kind is short, never a temperature', (raw) =>
  expect(shownTempC(raw)).toEqual({ ok: false, refusal: 'short' }));
it('a shorted thermocouple reads the place of the short: plausible, and no fault', () => {
  const read = shownTempC({ kind: 'type-k', emfV: 0, coldJunctionTempC: 22 });
  expect(read.ok && Math.abs(read.value - 22) < 1e-4).toBe(true);
});
it('each raw kind comes back as its temperature', () => {
  const read = shownTempC({ kind: 'type-k', emfV: typeKEmfV(121) - typeKEmfV(30), coldJunctionTempC: 30 });
  expect(read.ok && Math.abs(read.value - 121) < 1e-4).toBe(true);
});
