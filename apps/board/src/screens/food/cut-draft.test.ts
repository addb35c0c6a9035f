import type { CutSettings } from '@stokehold/domain/contract';
import { STARTING_CUTS } from '@stokehold/domain/food';
import { expect, it } from 'vitest';
import { FormReading } from '../../parts/form-reading.js';
import { figuresOf } from '../../units/figures.js';
import { changedCut, typedOf } from './cut-draft.js';

const us = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
const settings = ({ wrap, done, ...cut }: (typeof STARTING_CUTS)[number]): CutSettings => ({ ...cut, done: { coreTempC: done.coreTempC ?? null, tenderHoursAt90: done.tenderHoursAt90 ?? null }, wrap: wrap ?? null });
const cuts = STARTING_CUTS.map(settings);
const brisket = cuts.find(({ code }) => code === 'brisket')!;
const read = (cut: CutSettings, more: Record<string, string> = {}, wrapIn: 'none' | 'foil' | 'paper' = cut.wrap?.kind ?? 'none') => {
  const reading = new FormReading(us, 'UTC');
  return { cut: changedCut(cut, { typed: { ...typedOf(cut, (as, si) => String(us.shown(as, si))), ...more }, wrapIn, source: cut.source }, reading), wrongs: reading.wrongs };
};

it.each(cuts.map((cut) => ({ code: cut.code, cut })))('$code saved as it was shown stays as it was', ({ cut }) => {
  const { cut: after, wrongs } = read(cut);
  expect(wrongs).toEqual({});
  expect(after!.body).toEqual(cut.body);
  expect(after!.done).toEqual(cut.done);
  expect(after!.yieldFrac).toBeCloseTo(cut.yieldFrac, 12);
  expect([after!.rest, after!.hold, after!.wrap]).toEqual([cut.rest, cut.hold, cut.wrap]);
});
it('a thickness that was typed is the thickness of the usual weight', () => {
  const { cut } = read(brisket, { thickness: '5.5', usual: '15' });
  expect(cut!.body.halfThicknessM * 2).toBeCloseTo(5.5 * 0.0254, 9);
  expect(cut!.body.referenceKg).toBeCloseTo(15 * 0.45359237, 9);
});
it('a done temperature in °F is one in °C, an empty one is none, no wrap is none', () => {
  expect(read(brisket, { doneTemp: '205' }).cut!.done.coreTempC).toBeCloseTo(96.111, 3);
  expect(read(brisket, { doneTemp: '' }).cut!.done.coreTempC).toBeNull();
  expect(read(brisket, {}, 'none').cut!.wrap).toBeNull();
});
it('what cannot be is named by its field', () => {
  expect(read(brisket, { usual: '0', yield: 'half', portion: '' }).wrongs).toMatchObject({ usual: { code: 'between' }, yield: { code: 'not-a-number' }, portion: { code: 'needed' } });
});
