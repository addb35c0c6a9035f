import { describe, expect, it } from 'vitest';
import { stepsDone, type SoFar } from './guide-steps.js';

const pit = (xM: number, retired = false) => ({ xM, yM: 3, retired });
const person = (hasPin: boolean, left = false) => ({ hasPin, left });
const soFar = (more: object): SoFar => ({ setup: { yard: {}, pits: [], crew: [person(true)] }, devices: [{ kind: 'hand', revokedAt: null }], lots: [], hasShift: false, ...more }) as unknown as SoFar;

describe('the steps of a first run', () => {
  it('just after the yard was made, none is done: the manager and this device are there already', () => {
    expect([...stepsDone(soFar({}))]).toEqual([]);
  });

  it('pits stand on the plan once no two stand on the same spot; one that was given up counts no more', () => {
    expect([...stepsDone(soFar({ setup: { yard: {}, pits: [pit(2), pit(2)], crew: [] } }))]).toEqual(['pits']);
    expect([...stepsDone(soFar({ setup: { yard: {}, pits: [pit(2), pit(6)], crew: [] } }))]).toEqual(['pits', 'plan']);
    expect([...stepsDone(soFar({ setup: { yard: {}, pits: [pit(2, true)], crew: [] } }))]).toEqual([]);
  });

  it('a crew is two people with PINs, phones are two besides none that was ended', () => {
    expect(stepsDone(soFar({ setup: { yard: {}, pits: [], crew: [person(true), person(false), person(true, true)] } })).has('crew')).toBe(false);
    expect(stepsDone(soFar({ setup: { yard: {}, pits: [], crew: [person(true), person(true)] } })).has('crew')).toBe(true);
    const devices = (revokedAt: string | null) => [{ kind: 'hand', revokedAt: null }, { kind: 'hand', revokedAt }, { kind: 'wall', revokedAt: null }];
    expect([...stepsDone(soFar({ devices: devices(null) }))]).toEqual(['wall', 'phones']);
    expect([...stepsDone(soFar({ devices: devices('2027-03-13T08:00:00Z') }))]).toEqual(['wall']);
  });

  it('the practice night is never done', () => {
    const all = soFar({ setup: { yard: { place: {} }, pits: [pit(2)], crew: [person(true), person(true)] }, devices: [{ kind: 'hand', revokedAt: null }, { kind: 'hand', revokedAt: null }, { kind: 'wall', revokedAt: null }], lots: [{}], hasShift: true });
    expect(stepsDone(all).size).toBe(8);
    expect(stepsDone(all).has('practice')).toBe(false);
  });
});
