import { describe, expect, it } from 'vitest';
import { layOutZone, MOST_DRAWN } from './lay-out-zone.js';

const room = { x: 10, y: 20, width: 90, height: 60 };

describe('pieces in a zone', () => {
  it.each([1, 2, 3, 7, 8, 9, 12])('%i pieces lie inside their zone and not on each other', (pieces) => {
    const spots = layOutZone(pieces, room);
    expect(spots).toHaveLength(pieces);
    for (const spot of spots) {
      expect(spot.x).toBeGreaterThanOrEqual(room.x);
      expect(spot.y).toBeGreaterThanOrEqual(room.y);
      expect(spot.x + spot.width).toBeLessThanOrEqual(room.x + room.width + 1e-9);
      expect(spot.y + spot.height).toBeLessThanOrEqual(room.y + room.height + 1e-9);
    }
    for (const [i, a] of spots.entries())
      for (const b of spots.slice(i + 1))
        expect(a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y).toBe(true);
  });

  it('an empty zone shows nothing, and sixty links show as many as can be told apart', () => {
    expect(layOutZone(0, room)).toEqual([]);
    expect(layOutZone(60, room)).toHaveLength(MOST_DRAWN);
  });
});
