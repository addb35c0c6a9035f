import { commandKey as keyOfContract } from '@stokehold/domain/contract';
import ways from 'contract:ways';
import { describe, expect, it } from 'vitest';
import { addressOf } from './ask.js';
import { commandKey } from './command-key.js';
import { withKey } from './use-command.js';

describe('asking the server', () => {
  it('a parameter goes into the address and out of the body', () => {
    expect(addressOf(ways.finishTask, { taskId: 'a b', key: 'k' })).toEqual({ path: '/api/tasks/a%20b/done', rest: { key: 'k' } });
  });

  it('what a GET is asked with goes into its query', () => {
    expect(addressOf(ways.checks, { pitId: 'p', since: '2027-03-13T08:00:00Z' }).path).toBe('/api/checks?pitId=p&since=2027-03-13T08%3A00%3A00Z');
  });

  it('a key is a UUID of version 7, later ones sort later (RFC 9562, 5.7)', () => {
    const [early, late] = [commandKey(1_800_000_000_000), commandKey(1_800_000_000_001)];
    expect(keyOfContract.safeParse(early).success).toBe(true);
    expect(early).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(early < late).toBe(true);
    // The first 48 bits are the milliseconds, by hand: 1 800 000 000 000 = 0x01a3185c5000.
    expect(early.replaceAll('-', '').slice(0, 12)).toBe('01a3185c5000');
  });

  it('key and clock are added where the route has them, and only there', () => {
    const pitId = '0190a000-0000-7000-8000-000000000001' as never;
    expect(Object.keys(withKey('recordWeather', { seenAt: '', windMPerS: 1, gustMPerS: 2, fromDeg: 0, ambientTempC: 9, rainFrac: 0 }, 'k', false))).not.toContain('sentAt');
    expect(withKey('moveWood', { lotId: pitId, pitId, pieces: 1, way: 'pull' }, 'k', false)).toMatchObject({ key: 'k', sentAt: expect.stringMatching(/Z$/) });
  });
});
