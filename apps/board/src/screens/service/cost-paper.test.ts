import { expect, it } from 'vitest';
import type { ServiceCost } from '@stokehold/domain/contract';
import { pdfOf } from '../../parts/paper-pdf.js';
import { figuresOf } from '../../units/figures.js';
import '../../words/service.js';
import { sayIn } from '../../words/words.js';
import { costPaper } from './cost-paper.js';

const cost = {
  service: { id: 's', name: 'Market lunch', readyBy: '2027-10-16T16:30:00Z', portions: 210 },
  cooks: [{ cook: { id: 'k', cut: 'Brisket', pieces: 6, weightKg: 38, yieldKg: null }, woodCents: 3100, crewCents: 9000, meatCents: 0, totalCents: 12_100, splits: 21.5, perServedKgCents: null }],
  wood: [{ lot: 'West oak', splits: 21.5, massKg: 33, costCents: 3100 }], crew: [{ person: 'Ilse', workedS: 9000, costCents: 9000 }],
  woodCents: 3100, crewCents: 9000, meatCents: 0, totalCents: 12_100, perPortionCents: 57.6, perKgCents: 318.4, unpricedSplits: 0, unpricedMeat: 1,
  against: { plannedWoodCents: 2400, plannedSplits: 17, plannedCrewCents: 9000, causes: [{ cause: 'wind', cents: 700, splits: 4.5 }], pits: [{ pit: 'Marten', plannedSplits: 17, splits: 21, gusts: { lengthS: 7200, onto: 'firebox', plannedSplits: 3, splits: 6 } }] },
} as unknown as ServiceCost;

it.each(['en', 'es'] as const)('the sheet as a paper says in %s what the screen says: sums, cooks, lots, people, the gusts and their pit, and what is not priced', (language) => {
  const paper = costPaper(cost, sayIn(language, 'service'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language }));
  expect(paper.title).toBe('Market lunch');
  expect(paper.tables.map(({ rows }) => rows.length)).toEqual([1, 1, 1, 5]);
  const wind = paper.tables[3]!.rows[2]!;
  expect(wind.slice(1)).toEqual(['4.5', '$7.00']);
  expect(paper.tables[3]!.rows[4]).toEqual([expect.stringContaining('Marten, 2'), '3.0', '']);
  expect(paper.notes).toHaveLength(2);
  expect(pdfOf(paper).output().match(/Market lunch/g)!.length).toBeGreaterThan(0);
});

it('without a plan there is no table beside it', () => {
  const paper = costPaper({ ...cost, against: null }, sayIn('en', 'service'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }));
  expect(paper.tables).toHaveLength(3);
});
