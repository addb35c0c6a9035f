import type { PlanChange, PlanView } from '@stokehold/domain/contract';
import { fromIso, later, type PersonId } from '@stokehold/domain/quantity';
import { describe, expect, it } from 'vitest';
import { decisionsAfter, isDecision } from './decisions.js';

const ONE = fromIso('2027-01-16T07:00:00Z');
const odell = '01890000-0000-7000-8000-000000000001' as PersonId;
const change: PlanChange = {
  work: { kind: 'break', breakId: 'b' }, code: 'gone', from: { people: [odell], startsAt: '2027-01-16T07:10:00Z' }, to: null, because: { code: 'person-not-there', personId: odell, work: null },
};
const plan = (cause: PlanView['because']['cause'], minute: number, changes: PlanChange[], decisions: PlanView['decisions'] = []) => ({
  madeAt: later(ONE, 60 * minute), because: { cause, pitId: null, personId: odell }, changes, decisions,
});

describe('what a person decided', () => {
  it('stays listed for half an hour, with when, about whom and what it changed, however many fires make newer plans', () => {
    const away = plan('presence', 0, [change]);
    const afterCheck = plan('check', 3, [], decisionsAfter(away, later(ONE, 180)));
    const afterMinute = plan('minute', 9, [], decisionsAfter(afterCheck, later(ONE, 540)));
    expect(decisionsAfter(afterMinute, later(ONE, 29 * 60))).toEqual([
      { madeAt: '2027-01-16T07:00:00Z', listedUntil: '2027-01-16T07:30:00Z', because: away.because, changes: [change] },
    ]);
    expect(decisionsAfter(afterMinute, later(ONE, 30 * 60))).toEqual([]);
  });

  it('stands before what was decided earlier; each goes in its own time', () => {
    const away = plan('presence', 0, [change]);
    const given = plan('by-hand', 10, [change], decisionsAfter(away, later(ONE, 600)));
    expect(decisionsAfter(given, later(ONE, 660)).map(({ because }) => because.cause)).toEqual(['by-hand', 'presence']);
    expect(decisionsAfter(given, later(ONE, 35 * 60)).map(({ because }) => because.cause)).toEqual(['by-hand']);
  });

  it('is not listed where it changed nothing; what fires, breaks and tasks ask for is no decision', () => {
    expect(decisionsAfter(plan('presence', 0, []), ONE)).toEqual([]);
    expect(decisionsAfter(plan('check', 0, [change]), ONE)).toEqual([]);
    const causes: PlanView['because']['cause'][] = ['first', 'check', 'due-moved', 'presence', 'break', 'task', 'shift', 'pit', 'minute', 'by-hand'];
    expect(causes.filter((cause) => isDecision({ cause, pitId: null, personId: null }))).toEqual(['presence', 'shift', 'pit', 'by-hand']);
  });
});
