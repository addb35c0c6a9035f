import { describe, expect, it } from 'vitest';
import { connectionAt, STALE_AFTER_MS } from './stale.js';

describe('how a board stands with its server', () => {
  it('live while beats come each second', () => {
    expect(connectionAt(10_900, 10_000, 0)).toEqual({ kind: 'live' });
    expect(connectionAt(10_000 + STALE_AFTER_MS - 1, 10_000, 0)).toEqual({ kind: 'live' });
  });

  it('lost within five seconds of the last beat, looked at once a second, with its age', () => {
    expect(STALE_AFTER_MS + 1000).toBeLessThanOrEqual(5000);
    expect(connectionAt(17_500, 10_000, 0)).toEqual({ kind: 'stale', ageS: 7 });
  });

  it('opening until the first answer, and lost when none ever comes', () => {
    expect(connectionAt(3000, undefined, 0)).toEqual({ kind: 'opening' });
    expect(connectionAt(9000, undefined, 0)).toEqual({ kind: 'stale', ageS: 9 });
  });
});
