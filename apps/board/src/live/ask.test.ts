import { commandKey as keyOfContract } from '@stokehold/domain/contract';
import ways from 'contract:ways';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { addressOf, ask } from './ask.js';
import { commandKey } from './command-key.js';
import { Refused } from './refused.js';
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

describe('a house that asks a device for patience', () => {
  const sent: { readonly at: number; readonly body: unknown }[] = [];
  /** Answers of a house, one after the other, the last one again and again. */
  const answers = (...of: Response[]) =>
    vi.stubGlobal('fetch', async (_: string, { body }: RequestInit) => {
      sent.push({ at: Date.now(), body: body && JSON.parse(body as string) });
      return (of.length > 1 ? of.shift()! : of[0]!).clone();
    });
  const problem = (code: string, status: number, headers: Record<string, string> = {}) =>
    new Response(JSON.stringify({ type: '', title: '', status, detail: '', instance: '', code }), { status, headers: { 'content-type': 'application/problem+json', ...headers } });
  const tooFast = (seconds: number) => problem('device-too-fast', 429, { 'retry-after': String(seconds) });
  const done = new Response(JSON.stringify({ done: true }), { status: 201 });
  beforeEach(() => {
    sent.length = 0;
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('gets it when it said, with the same key and the clock of that moment', async () => {
    answers(tooFast(2), tooFast(1), done);
    const began = Date.now();
    const asked = ask('signOut', () => ({ key: 'k', sentAt: Date.now() }) as never);
    await vi.advanceTimersByTimeAsync(1999);
    expect(sent).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1001);
    expect(await asked).toEqual({ done: true });
    expect(sent).toEqual([0, 2000, 3000].map((ms) => ({ at: began + ms, body: { key: 'k', sentAt: began + ms } })));
  });

  it('is not asked for ever: what is kept on the device is kept, and the refusal is one that passes', async () => {
    answers(tooFast(1));
    const refused = ask('signOut', {}).catch((error: unknown) => error);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(await refused).toMatchObject({ problem: { code: 'device-too-fast' }, againAfterS: 1 });
    expect(sent).toHaveLength(4);
  });

  it('no other refusal is sent again by itself: a wrong PIN least of all', async () => {
    answers(problem('pin-wait', 429, { 'retry-after': '30' }));
    const refused = ask('signOut', {}).catch((error: unknown) => error);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(await refused).toBeInstanceOf(Refused);
    expect(sent).toHaveLength(1);
  });
});
