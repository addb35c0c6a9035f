import type { Job } from './night.js';

/** Breaks whose windows keep every stretch of work within its limit, and when work ends at the latest for it. */
export interface Stretched {
  readonly breaks: readonly Job[];
  readonly endS: number;
}

/**
 * Draws the windows of somebody's breaks together until no stretch of work between two of them, before the first or after
 * the last can be longer than the limit, wherever in its window each break is taken. Where that cannot be, the end of the
 * work is drawn in. Begun and pinned breaks stay. Held to rounds/stretch.test.ts.
 *
 * @param breaks  in order of their latest start
 */
export function withinStretch(breaks: readonly Job[], { readyS, endS, stretchS }: { readonly readyS: number; readonly endS: number; readonly stretchS: number | undefined }): Stretched {
  if (stretchS === undefined) return { breaks, endS };
  const windows = breaks.map((job) => ({ job, fromS: job.fixedS ?? job.releaseS, untilS: job.fixedS ?? job.latestS }));
  let reachS = readyS + stretchS;
  for (const window of windows) {
    if (window.job.fixedS === undefined) window.untilS = Math.max(window.fromS, Math.min(window.untilS, reachS));
    reachS = window.untilS + window.job.lengthS + stretchS;
  }
  let neededFromS = endS - stretchS;
  for (const window of [...windows].reverse()) {
    if (window.job.fixedS === undefined) window.fromS = Math.max(window.fromS, Math.min(window.untilS, neededFromS - window.job.lengthS));
    neededFromS = window.fromS - stretchS;
  }
  let restedS = readyS;
  for (const window of windows) {
    if (window.job.fixedS === undefined) window.untilS = Math.min(window.untilS, Math.max(window.fromS, restedS + stretchS));
    restedS = window.fromS + window.job.lengthS;
  }
  return {
    breaks: windows.map(({ job, fromS, untilS }) =>
      job.fixedS === undefined ? { ...job, releaseS: fromS, hardLatestS: Math.min(job.hardLatestS, untilS), targetS: Math.min(Math.max(job.targetS, fromS), untilS) } : job),
    endS: Math.min(endS, restedS + stretchS),
  };
}
