import { describe, expect, it } from 'vitest';
import { readable, SHOWN_FOR_MS } from './last-known.js';

describe('what a device last knew', () => {
  it('of an older version of the board, or no such thing at all, counts as nothing', () => {
    expect(readable(undefined, 0)).toBeUndefined();
    expect(readable({ me: { yard: {} }, state: {}, heardAtMs: 0 }, 0)).toBeUndefined();
  });

  it('is shown as long as the server takes in what was recorded: three days', () => {
    expect(SHOWN_FOR_MS).toBe(3 * 24 * 60 * 60 * 1000);
  });
});
