import { describe, expect, it } from 'vitest';
import type { LevelCost, WhatIfView, YardState } from '@stokehold/domain/contract';
import '../../words/night.js';
import '../../words/plan.js';
import '../../words/shared.js';
import { figuresOf } from '../../units/figures.js';
import { sayIn } from '../../words/words.js';
import { costsInWords, hindranceInWords, lateInWords, relaxInWords, supposedInWords, whatIfInWords, workToAsk, type Answering } from './answers.js';
import { namesIn } from './plan-changes.js';

const state = {
  pits: [{ pit: { id: 'larch', name: 'Larch' } }, { pit: { id: 'bess', name: 'Bess' } }],
  people: [{ id: 'ana', name: 'Ana' }, { id: 'odell', name: 'Odell' }],
  tasks: [{ id: 't1', kind: 'clear-ash', pitId: 'larch' }],
  shift: { people: [{ name: 'Ana', breaks: [{ id: 'b1' }] }] },
} as unknown as YardState;
const in_ = (language: 'en' | 'es'): Answering => ({
  say: sayIn(language, 'night'), shared: sayIn(language, 'shared'), plan: sayIn(language, 'plan'), time: (iso) => iso.slice(11, 16), names: namesIn(state),
  figures: figuresOf({ units: 'us', timeZone: 'UTC', language }),
});
const [en, es] = [in_('en'), in_('es')];
const check = (pit: string, nth = 4) => ({ kind: 'check', pitId: pit, nth }) as never;
const ID = (id: string) => id as never;

describe('what another person would cost', () => {
  const costs: readonly LevelCost[] = [{ level: 'lateWeightedS', by: 180 }, { level: 'uneven', by: -20_000 }, { level: 'promises', by: 10 }, { level: 'walkS', by: 95 }];
  it('is said level by level, the weightiest first, in whole minutes', () => {
    expect(costsInWords(costs, en)).toBe('3 min of late checks more, 2\u00a0% of uneven load less, changes what people were told, 2 min of walking more');
    expect(costsInWords(costs, es)).toBe('3 min de revisiones atrasadas más, 2\u00a0% de carga desigual menos, cambia lo que se le dijo a la gente, 2 min de caminar más');
  });
  it('leaves out what nobody would notice', () => {
    expect(costsInWords([{ level: 'walkS', by: 12 }, { level: 'uneven', by: 900 }, { level: 'lateWeightedS', by: -5 }], en)).toBe('');
  });
  it('never rounds seconds past latest safe away', () => {
    expect(costsInWords([{ level: 'unsafeS', by: 20 }, { level: 'unsafeChecks', by: 1 }], en)).toBe('1 min past latest safe more');
  });
});

describe('why not', () => {
  it('says who is hindered by what', () => {
    expect(hindranceInWords({ personId: ID('odell'), code: 'busy', work: check('larch') }, en)).toBe('Odell is busy then: Check of Larch');
    expect(hindranceInWords({ personId: ID('odell'), code: 'skill', work: null }, es)).toBe('Odell no sabe hacerlo');
  });
  it('says the matter, the hindrances, and the least that would help', () => {
    const late = { state: 'late' as const, lateS: 600, hindrances: [{ personId: ID('ana'), code: 'on-break' as const, work: { kind: 'break' as const, breakId: 'b1' } }], relax: { code: 'skip-break' as const, personId: ID('ana') } };
    expect(lateInWords(late, en)).toEqual(['It starts 10 min after it is due.', 'Ana is on break then.', 'The least that would help: move the break of Ana.']);
    expect(lateInWords({ ...late, state: 'in-time' }, en)).toEqual([]);
    expect(lateInWords({ ...late, state: 'unplaced', hindrances: [], relax: null }, es)).toEqual(['No tiene lugar en el plan.', 'Nada de lo que se probó ayudaría.']);
  });
  it('has a sentence for each relaxation', () => {
    expect(relaxInWords({ code: 'teach-skill', personId: ID('ana'), skill: 'saw' }, en)).toBe('somebody shows Ana how: saw');
    expect(relaxInWords({ code: 'later-latest', byS: 1200 }, es)).toBe('dejar que empiece 20 min más tarde');
    expect(relaxInWords({ code: 'one-person-more', skill: 'fire' }, en)).toBe('one person more who knows fire');
    expect(relaxInWords({ code: 'one-person-more', skill: null }, en)).toBe('one person more');
  });
});

describe('what if', () => {
  const side = (people: string[], time: string) => ({ people, startsAt: `2027-06-06T${time}:00Z` }) as never;
  const answer: WhatIfView = {
    changes: [{ work: check('bess'), code: 'other-person', from: side(['odell'], '02:10'), to: side(['ana'], '02:10'), because: { code: 'person-not-there', personId: ID('odell'), work: null } }],
    costs: [{ level: 'walkS', by: 300 }], unplaced: [], pastLatest: [check('larch', 5), check('larch', 6)],
    failing: [{ fromAt: '2027-06-06T02:00:00Z', untilAt: '2027-06-06T03:00:00Z', skill: null, missingPeople: 1 }, { fromAt: '2027-06-06T02:00:00Z', untilAt: '2027-06-06T03:00:00Z', skill: 'fire', missingPeople: 1 }],
  };
  it('names what was supposed', () => {
    expect(supposedInWords({ code: 'person-less', personId: ID('odell'), fromAt: '2027-06-06T01:00:00Z' }, en)).toBe('If Odell goes at 01:00:');
    expect(supposedInWords({ code: 'break-moved', breakId: 'b1', startsAt: '2027-06-06T01:00:00Z' }, es)).toBe('Si el descanso de Ana empieza a las 01:00:');
    expect(supposedInWords({ code: 'work-given', work: check('larch'), people: [ID('ana'), ID('odell')], startsAt: null }, en)).toBe('If this goes to Ana and Odell: Check of Larch.');
  });
  it('says the gravest first, each fire once, then each change with its reason, and the sum', () => {
    expect(whatIfInWords(answer, en)).toEqual({
      grave: ['Past latest safe: Check of Larch.', 'Too much work: 02:00–03:00.'],
      changes: ['Check of Bess at 02:10: Ana instead of Odell, because Odell is not there.'],
      costs: 'In all: 5 min of walking more.',
    });
  });
});

it('work can be asked about for the next hours, what has no place first', () => {
  const at = (time: string) => `2027-06-06T${time}:00Z`;
  const plan = { assignments: [{ work: check('larch'), startsAt: at('02:00') }, { work: check('bess'), startsAt: at('05:00') }], unplaced: [{ work: { kind: 'task', taskId: 't1' } }] };
  expect(workToAsk({ plan: plan as never }, Date.parse(at('03:00')) / 1000)).toEqual([{ kind: 'task', taskId: 't1' }, check('larch')]);
  expect(workToAsk({ plan: null }, 0)).toEqual([]);
});
