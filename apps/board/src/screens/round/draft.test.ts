import { recordCheck, type RecordCheck } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { checkOf, draftOf, missingIn, type Draft } from './draft.js';

const pitId = '0190a000-0000-7000-8000-000000000001' as RecordCheck['pitId'];
const seenAt = '2027-03-13T08:14:00Z';
const full: Draft = { bed: 'low', left: 'coals', put: 'two' };

describe('a check while it is being said', () => {
  it('asks for the coal bed, then for what is left, then for what was put on', () => {
    expect(missingIn({})).toBe('needBed');
    expect(missingIn({ bed: 'fair' })).toBe('needLeft');
    expect(missingIn({ bed: 'fair', left: 'some' })).toBe('needPut');
    expect(missingIn(full)).toBeUndefined();
    expect(checkOf({ bed: 'fair', left: 'some' }, pitId, seenAt)).toBeUndefined();
  });

  it('three choices make a check that the contract takes; a temperature nobody read is not in it', () => {
    const check = checkOf(full, pitId, seenAt);
    expect(check).toMatchObject({ bed: 'low', left: 'coals', splits: 2, raked: true, size: 'standard' });
    expect(check).not.toHaveProperty('fireEndTempC');
    expect(recordCheck.safeParse({ ...check, key: pitId }).success).toBe(true);
  });

  it('raked only means no split; whoever lays one has raked the coals even first', () => {
    expect(checkOf({ ...full, put: 'rake' }, pitId, seenAt)).toMatchObject({ splits: 0, raked: true });
  });

  it('a refused check comes back as the draft it was', () => {
    const draft: Draft = { bed: 'fair', left: 'most', put: 'one', size: 'thin', fireEndTempC: 122, stackEndTempC: 119, smoke: 'clean', air: { door: 'two-fingers', damper: 'open', screen: true }, note: 'door sticks' };
    const check = checkOf(draft, pitId, seenAt);
    expect(check && draftOf(check)).toEqual(draft);
  });
});
