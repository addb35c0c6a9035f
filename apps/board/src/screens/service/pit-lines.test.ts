import { expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import '../../words/service.js';
import { sayIn } from '../../words/words.js';
import { pitLines } from './pit-lines.js';

const pits = [
  { pit: 'Heron', plannedSplits: 14, splits: 14, gusts: { lengthS: 2100, onto: 'firebox' as const, plannedSplits: 0.9, splits: 1 } },
  { pit: 'Marten', plannedSplits: 20, splits: 26, gusts: { lengthS: 18_000, onto: 'stack' as const, plannedSplits: 10, splits: 14 } },
];
const said = (language: 'en' | 'es') => pitLines(pits, sayIn(language, 'service'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language })).map((line) => line.said.replaceAll('\u00a0', ' '));

it('the pit that burned more than planned comes first, and its gusts are said with what they took, unless that was next to nothing', () => {
  expect(said('en')).toEqual([
    'Marten: 26 splits in all, 20.0 planned (+30 %)', 'Marten, 5 h 00 of gusts onto its stack end: 14 splits, 10.0 planned for these hours (+40 %)', 'Heron: 14 splits in all, 14.0 planned (0 %)',
  ]);
});
it('the same in Spanish', () => expect(said('es')[1]).toBe('Marten, 5 h 00 de ráfagas contra su chimenea: 14 leños, 10.0 planeados para esas horas (+40 %)'));
it('a pit of which nothing was planned yet has no percentage', () => {
  const [line] = pitLines([{ pit: 'Lynx', plannedSplits: 0, splits: 2, gusts: null }], sayIn('en', 'service'), figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }));
  expect(line).toEqual({ said: 'Lynx: 2 splits in all, 0.0 planned (–)', moreSplits: 2 });
});
