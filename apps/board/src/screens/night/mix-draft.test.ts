import { expect, it } from 'vitest';
import { FormReading } from '../../parts/form-reading.js';
import { figuresOf } from '../../units/figures.js';
import { draftOfMix, mixOfDraft, type WishDraft } from './mix-draft.js';

const reading = () => new FormReading(figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }), 'America/Chicago');
const wish = (species: WishDraft['species'], least: string, most: string): WishDraft => ({ species, least, most });

it('per cent become fractions; an empty least is none, an empty most is all', () => {
  expect(mixOfDraft([wish('shagbark-hickory', '50', ''), wish('apple', '', '12.5')], reading())).toEqual([
    { species: 'shagbark-hickory', leastFrac: 0.5, mostFrac: 1 }, { species: 'apple', leastFrac: 0, mostFrac: 0.125 },
  ]);
  expect(mixOfDraft([], reading())).toEqual([]);
});

it('what was saved stands in the fields again', () => {
  const mix = [{ species: 'pecan' as const, leastFrac: 0.25, mostFrac: 0.6 }];
  expect(draftOfMix(mix)).toEqual([wish('pecan', '25', '60')]);
  expect(mixOfDraft(draftOfMix(mix), reading())).toEqual(mix);
});

it.each([
  { what: 'leasts of more than the whole', draft: [wish('pecan', '70', ''), wish('apple', '40', '')], field: 'mix.1.least', wrong: { code: 'between', low: '0', high: '30' } },
  { what: 'a most below its least', draft: [wish('pecan', '50', '40')], field: 'mix.0.most', wrong: { code: 'between', low: '50', high: '100' } },
  { what: 'a word', draft: [wish('pecan', 'much', '')], field: 'mix.0.least', wrong: { code: 'not-a-number' } },
])('$what is told at its field', ({ draft, field, wrong }) => {
  const read = reading();
  expect(mixOfDraft(draft, read)).toBeUndefined();
  expect(read.wrongs[field]).toEqual(wrong);
});
