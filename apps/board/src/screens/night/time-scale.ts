import { HOUR_S, type EpochS } from '@stokehold/domain/quantity';
import { fullHours, offsetChanges } from '../../units/typed-wall-time.js';
import type { Span } from './lanes.js';

/** Where an instant lies along the picture: as time passes, not as wall clocks count it, so a doubled hour is really twice as wide. */
export interface TimeScale {
  readonly span: Span;
  readonly widthPx: number;
  readonly xOf: (at: EpochS) => number;
}

const LEAST_PX_AN_HOUR = 68;

/** The picture fills its place, but an hour never gets so narrow that its marks run together: then the picture is wider and scrolls. */
export function timeScale(span: Span, placePx: number): TimeScale {
  const hours = (span.until - span.from) / HOUR_S;
  const widthPx = Math.max(placePx, Math.round(hours * LEAST_PX_AN_HOUR));
  return { span, widthPx, xOf: (at) => ((at - span.from) / (span.until - span.from)) * widthPx };
}

export interface Tick {
  readonly x: number;
  readonly at: EpochS;
  /** The second of two hours with the same name. */
  readonly again: boolean;
  /** The clocks have just gone forward (positive) or back, seconds. */
  readonly clocksByS: number;
}

/** A line for each full hour of the yard's clock, and word of the clocks changing at the hour where they do. */
export function ticksOf({ span, xOf }: TimeScale, zone: string): readonly Tick[] {
  const changes = offsetChanges(span.from, span.until, zone);
  return fullHours(span.from, span.until, zone).map(({ at, again }) => ({
    x: xOf(at), at, again, clocksByS: changes.find((change) => change.at === at)?.byS ?? 0,
  }));
}
