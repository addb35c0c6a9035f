import { FINDINGS, type Finding, type FindingFigures, type PartView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import '../../words/status.js';
import { sayIn } from '../../words/words.js';
import { lostSaid, partSaid, whenText, worstFirst, type Saying } from './part-said.js';

const sayingIn = (language: 'en' | 'es'): Saying => ({ say: sayIn(language, 'status'), figures: figuresOf({ units: 'us', timeZone: 'America/Chicago', language }) });
const NOW = '2027-01-16T08:14:00Z';
const part = (finding: Finding, figures: FindingFigures = {}, since: string | null = null): PartView => ({ ...FINDINGS[finding], finding, since, figures });
const ALL: FindingFigures = { count: 2, of: 8, usedFrac: 0.917, leftBytes: 5.2e9, sizeBytes: 2e9, answerS: 0.31, aheadS: 600, lastAt: '2027-01-16T08:02:00Z', names: ['Shed'] };

describe.each(['en', 'es'] as const)('in %s', (language) => {
  it.each(Object.keys(FINDINGS) as Finding[])('%s says what it means, and where it does not work what still does and what to do', (finding) => {
    const { state, means, still, toDo } = partSaid(part(finding, ALL), NOW, sayingIn(language));
    for (const text of [means, still, toDo]) expect(text ?? 'A.').toMatch(/^[0-9A-ZÁÉÍÓÚÑ¿].*[.:]$/s);
    expect([means, still, toDo].join(' ')).not.toMatch(/\{\{|\w+\.(means|still|do)|undefined|NaN/);
    expect([still !== undefined, toDo !== undefined]).toEqual([state === 'down' || state === 'limps', state !== 'works']);
  });
});

it('a disk that is nearly full is told by how full it is, what is left, and since when', () => {
  expect(partSaid(part('disk-nearly-full', ALL, '2027-01-16T08:02:00Z'), NOW, sayingIn('en'))).toMatchObject({
    name: 'Disk', stands: 'needs a hand', since: 'since 02:02, 12 min', means: expect.stringContaining('91\u00a0% full, 5.2\u00a0GB left.'), toDo: expect.stringMatching(/^Make room today/),
  });
  expect(partSaid(part('disk-nearly-full', ALL, '2027-01-16T08:02:00Z'), NOW, sayingIn('es')).since).toBe('desde 02:02, 12 min');
});

it('where the database lies elsewhere its disk is to be watched there', () => {
  expect(partSaid(part('disk-room', { ...ALL, elsewhere: true }), NOW, sayingIn('en')).means).toMatch(/lies on another server/);
  expect(partSaid(part('database-full', { ...ALL, elsewhere: true }), NOW, sayingIn('en')).toDo).toMatch(/database server/);
});

it('one screen and many are told apart', () => {
  expect(partSaid(part('push-beats', { count: 1 }), NOW, sayingIn('en')).means).toMatch(/^1 screen is/);
  expect(partSaid(part('push-beats', { count: 3 }), NOW, sayingIn('es')).means).toMatch(/^3 pantallas están/);
});

it('what happened is told by the hour, then by the day, then by the date', () => {
  const { figures } = sayingIn('en');
  expect(['2027-01-16T06:00:00Z', '2027-01-15T06:00:00Z', '2026-12-01T06:00:00Z'].map((at) => whenText(at, NOW, figures))).toEqual(['00:00', 'Fri 00:00', 'Dec 1, 2026']);
});

it('the worst stands on top, all else as it came', () => {
  const order = worstFirst([part('database-answers'), part('disk-filling'), part('outbox-empty'), part('broker-none'), part('tick-late'), part('backup-old')]);
  expect(order.map(({ finding }) => finding)).toEqual(['tick-late', 'disk-filling', 'backup-old', 'database-answers', 'outbox-empty', 'broker-none']);
});

it('a server that is lost is told with the age of what is shown, or that nothing is', () => {
  expect(lostSaid('server-away', { age: '64 s', lastAt: NOW }, sayingIn('en'))).toMatchObject({ name: 'Server', stands: 'does not work', since: 'since 02:14', means: expect.stringContaining('64 s old') });
  expect(lostSaid('database-lost', undefined, sayingIn('es'))).toMatchObject({ name: 'Base de datos', means: 'El servidor contesta, su base de datos no.' });
});
