import { type EndTemps, endTempsOf } from '@stokehold/domain/chamber';
import { isAnotherFire, isLit, type Kindling, kindlingOf, type Look } from '@stokehold/domain/fire';
import type { EpochS } from '@stokehold/domain/quantity';
import type { ZoneMean } from '../readings/index.js';
import type { KeptFire } from './pits.store.js';
import type { PitTonight } from './tonight.js';

/** Where the way of a fire begins: at what was believed at an instant, or as it is lit. */
export type Beginning = Kindling | { readonly at: EpochS; readonly belief: Uint8Array };

/** A fire about to be carried to now: the pit, what was believed of it, and what is new. */
export interface Errand {
  readonly pit: PitTonight;
  readonly kept: KeptFire | undefined;
  readonly begin: Beginning;
  readonly look?: Look & { readonly checkId: string };
  readonly lastLookAt: EpochS;
  /** Forecast, due time and advice are wanted now, however fresh the old ones are; the old due time is let go. */
  readonly anew: boolean;
}

const before = (kept: KeptFire | undefined) => kept && { believedAt: kept.believedAt, mode: kept.estimate.mode };

export const burnsNow = (pit: PitTonight, kept: KeptFire | undefined, now: EpochS): boolean => isLit(pit.lightAt, before(kept), now);

/** What was believed last of the fire that burns now; nothing for one that was lit since. */
export const keptOfThisFire = (pit: PitTonight, kept: KeptFire | undefined): KeptFire | undefined =>
  isAnotherFire(pit.lightAt, before(kept)) ? undefined : kept;

/** The fire as it goes on when nobody tells anything new of it. */
export function errandOf(pit: PitTonight, kept: KeptFire | undefined, lastLookAt: EpochS | undefined, now: EpochS): Errand {
  const mine = keptOfThisFire(pit, kept);
  if (mine) return { pit, kept: mine, begin: { at: mine.believedAt, belief: mine.belief }, lastLookAt: lastLookAt ?? mine.believedAt, anew: false };
  const begin = kindlingOf(pit.lightAt, pit.band, now);
  return { pit, kept: undefined, begin, lastLookAt: begin.at, anew: true };
}

/** What the probes showed at the two ends, by stretch; the last one ends at `to` even if the clock's stretch goes on. */
export function endsByStretch(means: readonly ZoneMean[], pit: PitTonight, span: { readonly from: EpochS; readonly to: EpochS }): (EndTemps & { until: EpochS })[] {
  const stretches = [...new Set(means.map(({ until }) => until))].filter((until) => until > span.from);
  return stretches.map((until) => ({
    ...endTempsOf(means.filter((mean) => mean.until === until), pit.shape.zones),
    until: until > span.to ? span.to : until,
  }));
}
