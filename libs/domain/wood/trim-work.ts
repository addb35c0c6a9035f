import { type EpochS, later, requireRange } from '../quantity/index.js';

/** When a piece of work may begin, is due, and has to begin at the latest. */
export interface WorkTimes {
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  readonly latestAt: EpochS;
  readonly lengthS: number;
}

/** A cut on a guarded saw, carrying included, and setting up, s. Source: common practice, no source. */
const CUT_S = 30;
const SET_UP_S = 300;
/** Due so long before it has to begin, s. Source: common practice, no source. */
const DUE_AHEAD_S = 1800;

/**
 * Trimming as work of its own, for those who may saw: after the wood was hauled and before the fire wants it. The haul has to come
 * sooner by as long as the saw takes.
 *
 *     length = set-up + cuts * time of a cut
 *
 * @param cuts      whole cuts, 1 to 1e4
 * @param haul      of the same wood, if it does not lie on its cart yet
 * @param wantedAt  when the fire wants wood that lies on its cart already
 * @returns Held to trim-work.test.ts
 */
export function trimWork({ now, cuts, haul, wantedAt }: { readonly now: EpochS; readonly cuts: number; readonly haul?: WorkTimes; readonly wantedAt: EpochS }): { readonly haul?: WorkTimes; readonly trim: WorkTimes } {
  requireRange('cuts', cuts, 1, 1e4);
  const lengthS = SET_UP_S + cuts * CUT_S;
  const notBefore = (at: EpochS, first: EpochS) => (at > first ? at : first);
  const hauled = haul && soonerBy(haul, lengthS, now);
  const earliestAt = hauled ? later(hauled.earliestAt, hauled.lengthS) : now;
  const wanted = haul ? later(haul.latestAt, haul.lengthS) : wantedAt;
  const latestAt = notBefore(later(wanted, -lengthS), earliestAt);
  const dueAt = notBefore(hauled ? later(hauled.dueAt, hauled.lengthS) : later(latestAt, -DUE_AHEAD_S), earliestAt);
  return { ...(hauled && { haul: hauled }), trim: { earliestAt, dueAt: dueAt < latestAt ? dueAt : latestAt, latestAt, lengthS } };
}

function soonerBy(work: WorkTimes, byS: number, now: EpochS): WorkTimes {
  const [dueAt, latestAt] = [work.dueAt, work.latestAt].map((at) => Math.max(now, later(at, -byS)) as EpochS) as [EpochS, EpochS];
  return { ...work, earliestAt: Math.min(work.earliestAt, dueAt) as EpochS, dueAt, latestAt };
}
