import type { Away } from './crew.js';

/** Overlapping and touching stretches made one, in order of time, so that nothing is counted twice. */
export function merged(stretches: readonly Away[]): readonly Away[] {
  const result: Away[] = [];
  for (const stretch of [...stretches].sort((one, other) => one.from - other.from)) {
    const last = result.at(-1);
    if (last && stretch.from <= last.until) result[result.length - 1] = { from: last.from, until: stretch.until > last.until ? stretch.until : last.until };
    else result.push(stretch);
  }
  return result;
}

/** The part of `stretch` that lies in `span`, s. */
export const overlapS = (stretch: Away, span: Away): number =>
  Math.max(0, Math.min(stretch.until, span.until) - Math.max(stretch.from, span.from));
