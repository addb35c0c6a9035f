import { expect, it } from 'vitest';
import { FormReading } from '../../parts/form-reading.js';
import { figuresOf } from '../../units/figures.js';
import { EMPTY_LOT, lotOf } from './lot-draft.js';

const reading = () => new FormReading(figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }), 'America/Chicago');
const beside = { id: 'lot' as never, species: 'white-oak' as const, bought: { wall: '2027-01-04T09:30', again: false } };
const typed = { ...EMPTY_LOT, name: 'North oak', length: '14', thickness: '3.5', percent: '13', pieces: '120', price: '168.50' };

it('inches, percent and dollars become metres, a part and cents; the bill and the scale are told only when they are known', () => {
  // by hand: 14 in x 0.0254 = 0.3556 m, 3.5 in = 0.0889 m; 09:30 in Chicago in winter is 15:30 UTC
  expect(lotOf(typed, beside, reading())).toEqual({
    lot: { id: 'lot', name: 'North oak', species: 'white-oak', lengthM: expect.closeTo(0.3556, 9), thicknessM: expect.closeTo(0.0889, 9), moisture: 0.13, boughtAt: '2027-01-04T15:30:00Z', priceCents: 16_850 }, pieces: 120,
  });
  expect(lotOf({ ...typed, cords: '0.5' }, beside, reading())?.also).toEqual([{ by: 'cords', cords: 0.5 }]);
});

it('every field that cannot be read is told at once', () => {
  const form = reading();
  expect(lotOf({ ...typed, pieces: '0', percent: '140', price: 'free' }, beside, form)).toBeUndefined();
  expect(Object.keys(form.wrongs).sort()).toEqual(['percent', 'pieces', 'price']);
});
