/** A stream of chance that is handed in, so that the same seed gives the same night on every machine. */
export interface RandomStream {
  /** Uniform in [0, 1). */
  next(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
  /** Whole number in [0, n). */
  below(n: number): number;
}

/** Spreads a text over 32 bits. FNV-1a: Fowler, Noll, Vo, as in RFC 9923; from memory. */
export function seedFrom(...parts: readonly (string | number)[]): number {
  let hash = 0x811c9dc5;
  for (const char of parts.join('/')) {
    hash ^= char.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}

/**
 * sfc32, a small fast counting generator (C. Doty-Humphrey, PractRand), state 128 bits, from memory;
 * only 32-bit integer steps, so bit-equal on every machine. Normal numbers by the polar method.
 */
export function randomStream(seed: number): RandomStream {
  let a = 0x9e3779b9 | 0;
  let b = seed | 0;
  let c = (seed ^ 0x243f6a88) | 0;
  let counter = 1;
  let spare: number | undefined;
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  const normal = () => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const u = 2 * next() - 1;
      const v = 2 * next() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * scale;
        return u * scale;
      }
    }
  };
  return { next, normal, below: (n) => Math.floor(next() * n) };
}
