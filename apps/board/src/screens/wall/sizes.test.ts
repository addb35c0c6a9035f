import { describe, expect, it } from 'vitest';
import { CAPITAL_FRAC, wallSizes } from './sizes.js';

const inches = (n: number) => n * 0.0254;
const hd = { widthPx: 1920, heightPx: 1080 };

describe('sizes of the wall', () => {
  it.each([
    // One CSS pixel at 1080 lines, mm, by hand: diagonal / sqrt(1920^2 + 1080^2) = diagonal / 2202.9.
    { diagonal: 43, mmPerPx: 0.496 },
    { diagonal: 55, mmPerPx: 0.634 },
    { diagonal: 65, mmPerPx: 0.749 },
  ])('a pixel of a $diagonal inch screen is $mmPerPx mm', ({ diagonal, mmPerPx }) => {
    const sizes = wallSizes({ screenDiagonalM: inches(diagonal), viewDistanceM: 5, ...hd });
    expect(sizes.mmPerPx).toBeCloseTo(mmPerPx, 3);
  });

  it('capitals subtend at least the 16 minutes of arc of ISO 9241-303 at the distance, and 20 percent beyond it', () => {
    for (const viewDistanceM of [3, 5, 8]) {
      const sizes = wallSizes({ screenDiagonalM: inches(65), viewDistanceM, ...hd });
      const minutes = (fontPx: number, atM: number) =>
        (2 * Math.atan((fontPx * CAPITAL_FRAC * sizes.mmPerPx) / 1000 / 2 / atM) * 180 * 60) / Math.PI;
      expect(minutes(sizes.small, viewDistanceM * 1.2)).toBeGreaterThanOrEqual(15.99);
      expect(minutes(sizes.middle, viewDistanceM)).toBeGreaterThanOrEqual(24);
      expect(minutes(sizes.large, viewDistanceM)).toBeGreaterThanOrEqual(34);
    }
  });

  it('six stripes stand on a 55 inch screen read at 5 m', () => {
    const sizes = wallSizes({ screenDiagonalM: inches(55), viewDistanceM: 5, ...hd });
    expect(sizes.stripes).toBe(6);
    expect(sizes.readable).toBe(true);
    expect(sizes.headPx + sizes.footPx + 6 * sizes.stripePx + 5 * sizes.gapPx).toBeLessThanOrEqual(1080);
  });

  it('a screen twice as sharp takes twice the pixels', () => {
    const coarse = wallSizes({ screenDiagonalM: inches(55), viewDistanceM: 5, ...hd });
    const fine = wallSizes({ screenDiagonalM: inches(55), viewDistanceM: 5, widthPx: 3840, heightPx: 2160 });
    expect(Math.abs(fine.large - 2 * coarse.large)).toBeLessThanOrEqual(2);
  });

  it('a 32 inch screen cannot be read across 12 m, and says so', () => {
    const sizes = wallSizes({ screenDiagonalM: inches(32), viewDistanceM: 12, ...hd });
    expect(sizes.readable).toBe(false);
    expect(sizes.readFromM).toBeLessThan(4);
    expect(wallSizes({ screenDiagonalM: inches(32), viewDistanceM: sizes.readFromM, ...hd })).toMatchObject({ readable: true, large: sizes.large });
  });
});
