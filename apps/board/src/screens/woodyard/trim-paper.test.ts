import { expect, it } from 'vitest';
import type { TrimView } from '@stokehold/domain/contract';
import { figuresOf } from '../../units/figures.js';
import '../../words/woodyard.js';
import { sayIn } from '../../words/words.js';
import { trimPaper } from './trim-paper.js';

const line = { pitId: 'p', lotId: 'l', splits: 9, pieces: 9, pieceLengthM: 0.3556, cuts: 9, offcuts: 9, offcutM: 0.127, short: true } as unknown as TrimView;

it('the trim list as a paper: what, how long, how many cuts, what it gives; the caution always, that of short pieces where there are some', () => {
  const beside = { say: sayIn('en', 'woodyard'), caution: 'Saws cut.', figures: figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }) } as Parameters<typeof trimPaper>[3];
  const names = { lot: () => 'Long oak', pit: () => 'Bess' };
  const paper = trimPaper([line], '2027-10-16T04:00:00Z', names, beside);
  // by hand: 0.3556 m are 14 in, 0.127 m are 5 in
  expect(paper.tables[0]!.rows).toEqual([['Bess', 'Long oak', '9', expect.stringMatching(/^14(\.0)?\sin$/), '9', '9', expect.stringMatching(/^9 × 5(\.0)?\sin$/)]]);
  expect(paper.notes).toHaveLength(2);
  expect(trimPaper([{ ...line, short: false }], '2027-10-16T04:00:00Z', names, beside).notes).toEqual(['Saws cut.']);
});
