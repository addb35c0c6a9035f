import { afterIterations } from '../search/index.js';
import type { Roster } from './roster.js';
import { searchRoster } from './search-roster.js';

/** So long at the most is a dispatch mended that leaves a fire unsafe or work without a place. Source: tests/bench/rounds.mjs. */
const MENDING = 300;

/** A dispatch in which as much is in time and in its place as a short search with a fixed seed can make so. */
export const mended = (dispatched: Roster): Roster => searchRoster(dispatched, { seed: 0, stop: afterIterations(MENDING), untilWhole: true }).roster;
