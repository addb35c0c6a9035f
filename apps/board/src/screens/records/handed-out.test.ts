import type { RecordsView } from '@stokehold/domain/contract';
import { expect, it } from 'vitest';
import { pdfOf } from '../../parts/paper-pdf.js';
import { csvOf } from '../../parts/save-file.js';
import { figuresOf } from '../../units/figures.js';
import '../../words/fire.js';
import '../../words/food.js';
import '../../words/records.js';
import '../../words/shared.js';
import { sayIn } from '../../words/words.js';
import { csvRows, fileName, linesOf, recordsPaper } from './handed-out.js';
import { logTable, type Saying } from './log-tables.js';

const sayingIn = (language: 'en' | 'es'): Saying => ({
  say: sayIn(language, 'records'), shared: sayIn(language, 'shared'), food: sayIn(language, 'food'), fire: sayIn(language, 'fire'), figures: figuresOf({ units: 'us', timeZone: 'America/Chicago', language }),
});
const NASTY = '=1+1\u202ecba,"x"';
const view = {
  yard: { name: 'Saltmarsh Yard', timeZone: 'America/Chicago', units: 'us', practice: false }, from: '2027-10-15T21:00:00Z', until: '2027-10-16T17:00:00Z', madeAt: '2027-10-16T18:00:00Z', head: { nth: 812, link: 'ab'.repeat(32) },
  fire: [{
    id: 'c1', person: 'Ilse', device: 'Tablet', at: '2027-10-16T05:00:00Z', deviceAt: '2027-10-16T05:45:00Z', arrivedAt: '2027-10-16T06:00:00Z', pit: 'Marten', bed: 'fair', left: 'some', raked: true, splits: 1, size: 'standard',
    lot: 'West oak', fireEndTempC: 125, stackEndTempC: null, smoke: 'clean', air: null, note: NASTY, wasDueAt: null, marks: ['clock-off'],
  }],
  food: [{ id: 'f1', person: null, device: 'Gateway', at: '2027-10-16T05:00:00Z', deviceAt: '2027-10-16T05:00:00Z', arrivedAt: '2027-10-16T05:00:01Z', cookId: 'k', cut: 'Brisket', kind: 'reading', stage: 'holding', tempC: 50, wrappedIn: null, action: null, limit: null, note: null, byProbe: true, corrects: null, corrected: false }],
  held: [{ cookId: 'k', cut: 'Brisket', pieces: 6, onAt: null, offAt: null, findings: [{ limit: 'hot-hold', code: 'food-code', edition: '2022', section: '3-501.16(A)(1)', outcome: 'missed', measured: { tempC: 50, durationS: 0 }, required: { tempC: 57.2, durationS: 0 }, runsOutAt: null, remedies: [], answered: false }] }],
  wood: [], hours: [], alarms: [], handovers: [], trail: [],
  corrections: [{ id: 'x', person: 'Renske', device: 'Desk', at: '2027-10-16T15:00:00Z', log: 'fire', line: 'c1', isRight: 'two splits', because: 'miscounted' }],
} as unknown as RecordsView;

it.each(['en', 'es'] as const)('a line in %s has who, what, when by the yard and by the device, when it came in, and what was written beside it', (language) => {
  const [row] = logTable(sayingIn(language), view, 'fire').rows;
  expect(row!.cells[0]).toMatch(/00:00.*00:45/);
  expect(row!.cells.slice(1, 5)).toEqual(['01:00', 'Ilse', 'Tablet', 'Marten']);
  expect(row!.cells[7]).toBe('257° / –');
  expect(row!.corrections).toEqual([expect.stringMatching(/Renske.*two splits.*miscounted/)]);
});

it('the paper holds every log, corrections below their lines, the limit by its section, and the end of the record', () => {
  const paper = recordsPaper(sayingIn('en'), view);
  expect(paper.tables).toHaveLength(8);
  expect(paper.tables[0]!.rows).toHaveLength(2);
  expect(JSON.stringify(paper.tables[2])).toContain('3-501.16(A)(1)');
  expect(paper.notes.at(-1)).toContain(`812:${'ab'.repeat(32)}`);
  expect(JSON.stringify(paper)).not.toMatch(/\b(safe|compliant)\b/i);
  expect(pdfOf(paper).output()).toContain('Saltmarsh Yard');
  expect(linesOf(view)).toBe(3);
});

it('the CSV has the fields of the JSON; what looks like a formula stays text, and marks that turn the reading are written out', () => {
  const [heads, line] = csvRows(view, 'fire');
  expect(heads).toEqual(Object.keys(view.fire[0]!));
  expect(line![heads!.indexOf('at')]).toBe('2027-10-16T05:00:00Z');
  expect(csvOf([[NASTY]])).toBe('"\'=1+1<U+202E>cba,""x"""\r\n');
  expect(csvRows(view, 'held')[1]).toContain('3-501.16(A)(1)');
});

it('a file is named by the stretch alone, never by what somebody typed', () => {
  expect(fileName(view, '.pdf')).toBe('records-2027-10-15-2027-10-16.pdf');
});
