import { MINUTE_S } from '@stokehold/domain/quantity';
import type { LookGap, NightTask } from './facts.js';

// What the planner takes for granted of a night's work. Source of all of it: common practice, no source.

/** A look about every half hour; not before 18 min, not after 40 min. */
export const USUAL_GAP: LookGap = { earliestS: 18 * MINUTE_S, dueS: 30 * MINUTE_S, latestSafeS: 40 * MINUTE_S };
/** Rake, read, and put on a split. */
export const CHECK_S = 5 * MINUTE_S;
/** Work that begins within this time is not moved any more: somebody is on the way to it. */
export const FROZEN_AHEAD_S = 2 * MINUTE_S;
/** Work that begins within this time was shown to people, and each change of it is told. */
export const PROMISED_AHEAD_S = 120 * MINUTE_S;

/** What somebody must be able to do for a task. */
export const TASK_SKILL: { readonly [K in NightTask['kind']]: 'fire' | 'food' | 'lifting' | 'saw' } = {
  light: 'fire', load: 'food', turn: 'food', wrap: 'food', probe: 'food', unload: 'food', haul: 'lifting', trim: 'saw', 'clear-ash': 'fire',
};
/** Work that nobody likes is shared fairly. */
export const UNPLEASANT: readonly NightTask['kind'][] = ['haul', 'clear-ash'];
