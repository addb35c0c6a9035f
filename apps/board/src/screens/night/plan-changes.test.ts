import { describe, expect, it } from 'vitest';
import type { PlanChange, PlanView, YardState } from '@stokehold/domain/contract';
import '../../words/night.js';
import '../../words/shared.js';
import { sayIn } from '../../words/words.js';
import { causeInWords, changeInWords, decisionsListed, namesIn, newsOf, type Telling } from './plan-changes.js';

const state = {
  pits: [{ pit: { id: 'larch', name: 'Larch' } }],
  people: [{ id: 'ana', name: 'Ana' }, { id: 'odell', name: 'Odell' }],
  tasks: [{ id: 't1', kind: 'clear-ash', pitId: 'larch' }, { id: 't2', kind: 'haul', pitId: null }],
  shift: { people: [{ name: 'Ana', breaks: [{ id: 'b1' }] }] },
} as unknown as YardState;
const telling = (language: 'en' | 'es'): Telling => ({
  say: sayIn(language, 'night'), shared: sayIn(language, 'shared'), time: (iso) => iso.slice(11, 16), names: namesIn(state),
});
const side = (people: string[], time: string) => ({ people, startsAt: `2027-06-06T${time}:00Z` }) as never;
const check = { kind: 'check', pitId: 'larch', nth: 4 } as never;

describe('a change of the plan as a sentence', () => {
  const moved: PlanChange = { work: check, code: 'moved-other-person', from: side(['ana'], '02:10'), to: side(['odell'], '02:25'), because: { code: 'work-before-ran-over', personId: 'ana' as never, work: { kind: 'task', taskId: 't1' as never } } };
  const NONE = { code: 'new-work', personId: null, work: null } as const;
  it('says what, who and when, before and now', () => {
    expect(changeInWords(moved, telling('en'))).toBe('Check of Larch: Odell at 02:25 instead of Ana at 02:10, because this ran over: clear ash at Larch.');
    expect(changeInWords(moved, telling('es'))).toBe('Revisión de Larch: Odell a las 02:25 en vez de Ana a las 02:10, porque esto se alargó: sacar ceniza en Larch.');
  });
  it('names tasks by what they are and where, and breaks by whose they are', () => {
    const task: PlanChange = { work: { kind: 'task', taskId: 't1' as never }, code: 'new', from: null, to: side(['ana', 'odell'], '04:00'), because: NONE };
    expect(changeInWords(task, telling('en'))).toBe('Clear ash at Larch: new, Ana and Odell at 04:00.');
    const rest: PlanChange = { work: { kind: 'break', breakId: 'b1' }, code: 'moved', from: side(['ana'], '01:00'), to: side(['ana'], '01:20'), because: { code: 'made-room', personId: null, work: null } };
    expect(changeInWords(rest, telling('es'))).toBe('Descanso de Ana: Ana, ahora a las 01:20 en vez de las 01:00, porque así cabe mejor.');
  });
  it('says that a piece of work falls away', () => {
    const gone: PlanChange = { work: { kind: 'task', taskId: 't2' as never }, code: 'gone', from: side(['odell'], '03:00'), to: null, because: { code: 'person-not-there', personId: 'odell' as never, work: null } };
    expect(changeInWords(gone, telling('en'))).toBe('Haul wood: falls away; it was Odell at 03:00, because Odell is not there.');
  });
  it('names the fire that wants its look at another time, and not what needs no reason', () => {
    const due: PlanChange = { ...moved, code: 'moved', because: { code: 'due-moved', personId: null, work: null } };
    expect(changeInWords(due, telling('en'))).toBe('Check of Larch: Odell, now 02:25 instead of 02:10, because the fire of Larch wants its look then.');
  });
  it('says why, with the name it is about', () => {
    const because = (cause: string, pitId: string | null, personId: string | null) => ({ because: { cause, pitId, personId } }) as unknown as PlanView;
    expect(causeInWords(because('presence', null, 'odell'), telling('en'))).toBe('Planned anew because of what was reported of Odell.');
    expect(causeInWords(because('check', 'larch', null), telling('es'))).toBe('Se planeó de nuevo porque se anotó una revisión de Larch.');
    expect(causeInWords(because('by-hand', null, 'ana'), telling('en'))).toBe('Planned anew because Ana decided it by hand.');
    expect(causeInWords(because('by-hand', null, null), telling('es'))).toBe('Se planeó de nuevo porque alguien lo decidió a mano.');
    expect(causeInWords(because('pit', null, null), telling('en'))).toBe('Planned anew because a pit was changed.');
  });
});

describe('a decision', () => {
  it('is listed until its time is up, by the clock of whoever looks', () => {
    const decided = (listedUntil: string) => ({ madeAt: listedUntil, listedUntil, because: { cause: 'presence', pitId: null, personId: null }, changes: [] }) as never;
    const decisions = [decided('2027-06-06T06:40:00Z'), decided('2027-06-06T06:20:00Z')];
    expect(decisionsListed({ decisions }, Date.parse('2027-06-06T06:19:59Z') / 1000)).toEqual(decisions);
    expect(decisionsListed({ decisions }, Date.parse('2027-06-06T06:20:00Z') / 1000)).toEqual([decisions[0]]);
  });
});

describe('news', () => {
  const change = (code: PlanChange['code'], from: string, to: string): PlanChange => ({ work: check, code, from: side(['ana'], from), to: side(['ana'], to), because: { code: 'made-room', personId: null, work: null } });
  it('leaves small moves out and counts them; another person is news however small the move', () => {
    const all = [change('moved', '03:00', '03:20'), change('moved', '02:00', '02:05'), change('moved-other-person', '01:00', '01:02')];
    const { news, smallMoves } = newsOf(all);
    expect(news).toEqual([all[2], all[0]]);
    expect(smallMoves).toBe(1);
  });
});
