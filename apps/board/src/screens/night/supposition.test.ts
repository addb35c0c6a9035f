import { fromIso } from '@stokehold/domain/quantity';
import type { YardState } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { breaksToCome, nearestStep, restingPits, supposedByDrop, type Dragged } from './supposition.js';

const at = (time: string) => fromIso(`2027-06-06T${time}:00Z`);
const check = { kind: 'check', pitId: 'larch', nth: 4 } as const;
const load = { kind: 'task', taskId: 't1' } as const;
const state = { plan: { assignments: [{ work: check, people: ['ana'] }, { work: load, people: ['ana', 'bo'] }] } } as unknown as YardState;
const mark = (work: object | null, past = false) => ({ work, past }) as unknown as Dragged['mark'];
const drop = (more: Partial<Dragged>) => supposedByDrop({ mark: mark(check), breakId: undefined, fromPerson: 'ana', toPerson: 'cy', at: at('02:00'), ...more }, state);

describe('a drop', () => {
  it('on another person supposes that they do it', () => {
    expect(drop({})).toEqual({ code: 'work-given', work: check, people: ['cy'], startsAt: null });
  });
  it('of work for two exchanges the one it was taken from', () => {
    expect(drop({ mark: mark(load) })).toEqual({ code: 'work-given', work: load, people: ['cy', 'bo'], startsAt: null });
    expect(drop({ mark: mark(load), toPerson: 'bo' })).toBeUndefined();
  });
  it('on the same person, of what was done, or of what is in no plan, supposes nothing', () => {
    expect(drop({ toPerson: 'ana' })).toBeUndefined();
    expect(drop({ mark: mark(check, true) })).toBeUndefined();
    expect(drop({ mark: mark(null) })).toBeUndefined();
    expect(drop({ mark: mark({ ...check, nth: 9 }) })).toBeUndefined();
  });
  it('of a break along its own line moves it to the nearest five minutes, and nobody else can take it', () => {
    expect(nearestStep(fromIso('2027-06-06T02:07:31Z'))).toBe(at('02:10'));
    expect(drop({ mark: undefined, breakId: 'b1', toPerson: 'ana', at: at('02:07') })).toEqual({ code: 'break-moved', breakId: 'b1', startsAt: '2027-06-06T02:05:00Z' });
    expect(drop({ mark: undefined, breakId: 'b1' })).toBeUndefined();
  });
});

it('breaks to come and pits that rest can be chosen', () => {
  const rest = { lengthS: 600, earliestAt: '2027-06-06T01:00:00Z', plannedAt: '2027-06-06T01:30:00Z' };
  const shift = { people: [{ name: 'Ana', breaks: [{ id: 'b1', ...rest, beganAt: '2027-06-06T01:31:00Z' }, { id: 'b2', ...rest, beganAt: null }] }] };
  expect(breaksToCome({ shift } as unknown as YardState)).toEqual([{ id: 'b2', name: 'Ana', at: at('01:30') }]);
  const pits = [{ pit: { id: 'a', retired: false }, tonight: {} }, { pit: { id: 'b', retired: false }, tonight: null }, { pit: { id: 'c', retired: true }, tonight: null }];
  expect(restingPits({ pits } as unknown as YardState).map(({ id }) => id)).toEqual(['b']);
});
