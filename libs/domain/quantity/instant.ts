import type { EpochS } from './quantity.js';

// The one file of the libs that may name Date: it only translates, it never asks what time it is.

/** '2027-03-14T08:00:00Z' from whole seconds; UTC, without a fraction. */
export const toIso = (at: EpochS): string => `${new Date(at * 1000).toISOString().slice(0, 19)}Z`;

/** Whole seconds from an ISO 8601 instant with an offset; a fraction of a second is cut off. NaN if it is none. */
export const fromIso = (iso: string): EpochS => Math.floor(Date.parse(iso) / 1000) as EpochS;

export const epochS = (seconds: number) => Math.floor(seconds) as EpochS;
/** The instant `seconds` later (earlier if negative). */
export const later = (at: EpochS, seconds: number) => Math.floor(at + seconds) as EpochS;

export const MINUTE_S = 60;
export const HOUR_S = 3600;
