import { describe, expect, it } from 'vitest';
import { connectionAt, STALE_AFTER_MS } from './stale.js';

const opened = { openedMs: 0, atMs: undefined, beforeMs: undefined, isOffline: false };

describe('how a board stands with its server', () => {
  it('live while beats come each second', () => {
    expect(connectionAt(10_900, { ...opened, atMs: 10_000 })).toEqual({ kind: 'live' });
    expect(connectionAt(10_000 + STALE_AFTER_MS - 1, { ...opened, atMs: 10_000 })).toEqual({ kind: 'live' });
  });

  it('lost within five seconds of the last beat, looked at once a second, with its age', () => {
    expect(STALE_AFTER_MS + 1000).toBeLessThanOrEqual(5000);
    expect(connectionAt(17_500, { ...opened, atMs: 10_000 })).toEqual({ kind: 'stale', ageS: 7 });
  });

  it('opening until the first answer, and lost when none ever comes', () => {
    expect(connectionAt(3000, opened)).toEqual({ kind: 'opening' });
    expect(connectionAt(9000, opened)).toEqual({ kind: 'stale', ageS: 9 });
  });

  it('opened without a server, it says how old is what the device remembers', () => {
    const remembered = { ...opened, beforeMs: -3_600_000 };
    expect(connectionAt(3000, remembered)).toEqual({ kind: 'opening' });
    expect(connectionAt(4000, remembered)).toEqual({ kind: 'stale', ageS: 3604 });
    expect(connectionAt(1000, { ...remembered, isOffline: true })).toEqual({ kind: 'stale', ageS: 3601 });
    expect(connectionAt(4500, { ...remembered, atMs: 4000 })).toEqual({ kind: 'live' });
  });
});
