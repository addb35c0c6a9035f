import { clamp, type EpochS, later } from '../quantity/index.js';
import { type Ahead, lookAhead } from './ahead.js';
import { type FireBelief, MEMBERS, PAST_NUMBERS } from './belief.js';
import { modeOf } from './estimate.js';
import type { Band, Surroundings } from './pit.js';

/** What the due time follows from: the band, the bed, the time since the last look, lighting, or a fire that runs hot. */
export type DueWhy = 'band' | 'bed' | 'last-look' | 'start-up' | 'hot';
/** When to look at a fire next; always last look < earliest <= due <= latest safe. */
export interface Due {
  readonly earliestAt: EpochS;
  readonly dueAt: EpochS;
  /** After it the band or the bed is at risk: a term for a time, no promise. */
  readonly latestSafeAt: EpochS;
  readonly why: DueWhy;
}

/** How far a due time looks ahead. */
export const HORIZON_MIN = 120;
/** So far below the band is trouble, K: 15 °F. Source: our fit. */
const TROUBLE_K = 8.33;
/** Of the members, so many may be in trouble before it is too late. Source: our fit, tests/bench/fire-skill.mjs. */
const TROUBLE_SHARE = 0.05;
/** Nobody stays away longer, s, however well a fire burns; and no longer with nothing measured since. Source: common practice, no source (about every half hour). */
const LONGEST_AWAY_S = 50 * 60;
const LONGEST_BLIND_S = 30 * 60;
const FIRST_LOOK_S = 20 * 60;
/** A look within this of the last one tells nothing new; at the latest this long before the fire is due is early enough. Source: our fit. */
const SHORTEST_AWAY_S = 5 * 60;
const EARLY_S = 10 * 60;
/** A fire that was out of the band at the look and will not come back by itself: look again after, s. Source: our fit. */
const NO_RECOVERY_S = 15 * 60;
/** A belief counts as measured while its last temperature is younger than this. */
const FRESH_S = 15 * 60;

/**
 * Due and latest safe of the next look. Due: half of the members below the band. Latest safe: more than one in twenty
 * 15 °F below it, or with the bed nearly out. What has begun in the past keeps its time, so that an overdue fire stays overdue.
 *
 * @param ask.lastLookAt  the last fire check, or the lighting
 * @returns lastLookAt < earliestAt <= dueAt <= latestSafeAt
 */
export function dueOf(belief: FireBelief, ask: Surroundings & { readonly band: Band; readonly lastLookAt: EpochS }): Due {
  return dueFrom(belief, ask, lookAhead(belief, ask, HORIZON_MIN));
}

/** The due time from a look ahead of two hours. */
export function dueFrom(belief: FireBelief, ask: { readonly band: Band; readonly lastLookAt: EpochS }, ahead: Ahead): Due {
  const { lastLookAt } = ask;
  const onset = onsetOf(belief, ask, ahead);
  const measured = belief.lastTempAt !== undefined && belief.at - belief.lastTempAt <= FRESH_S && belief.lastTempAt > lastLookAt;
  const away = belief.ungraded ? FIRST_LOOK_S : measured ? LONGEST_AWAY_S : LONGEST_BLIND_S;
  const byLook = later(lastLookAt, onset.hot && !belief.ungraded ? Math.min(away, LONGEST_BLIND_S) : away);
  const byBand = onset.belowAt ?? later(belief.at, HORIZON_MIN * 60);
  const byTrouble = onset.troubleAt ?? later(belief.at, HORIZON_MIN * 60);
  const starting = modeOf(belief) === 'start-up';
  const wanted = starting ? byLook : Math.min(byLook, byBand, byTrouble);
  const dueAt = later(Math.max(wanted, lastLookAt + SHORTEST_AWAY_S) as EpochS, 0);
  const earliestAt = later(clamp(dueAt - EARLY_S, lastLookAt + 1, dueAt) as EpochS, 0);
  const latestSafeAt = later(Math.max(dueAt, starting ? byLook + EARLY_S : byTrouble) as EpochS, 0);
  const why: DueWhy = starting
    ? 'start-up'
    : byTrouble < Math.min(byBand, byLook) && onset.bedFirst
      ? 'bed'
      : byLook < byBand
        ? onset.hot ? 'hot' : 'last-look'
        : 'band';
  return { earliestAt, dueAt, latestSafeAt, why };
}

interface Onset {
  /** When the middle falls below the band; when more than one in twenty is in trouble. */
  readonly belowAt: EpochS | undefined;
  readonly troubleAt: EpochS | undefined;
  readonly bedFirst: boolean;
  readonly hot: boolean;
}

function onsetOf(belief: FireBelief, ask: { readonly band: Band; readonly lastLookAt: EpochS }, looked: Ahead): Onset {
  const { lowC } = ask.band;
  const below: boolean[] = [];
  const trouble: boolean[] = [];
  let bedFirst = false;
  let hot = false;
  for (let minute = 0; minute <= HORIZON_MIN; minute++) {
    const share = sharesOf(looked, minute, ask.band);
    bedFirst ||= share.nearlyOut > TROUBLE_SHARE && !trouble.includes(true);
    below.push(share.below > 0.5);
    trouble.push(share.trouble > TROUBLE_SHARE);
    if (minute === 0) hot = share.above > 0.5;
  }
  const wasBelow = (row: number) => belief.past[row + 1]! < lowC;
  const wasTrouble = (row: number) => belief.past[row + 2]! < lowC - TROUBLE_K || belief.past[row + 3]! > TROUBLE_SHARE;
  return { belowAt: onsetAt(belief, ask.lastLookAt, below, wasBelow), troubleAt: onsetAt(belief, ask.lastLookAt, trouble, wasTrouble), bedFirst, hot };
}

/** Shares of the members that in that minute are below the band, above it, in trouble, and in trouble for their bed. */
function sharesOf(looked: Ahead, minute: number, { lowC, highC }: Band) {
  let below = 0, trouble = 0, nearlyOut = 0, above = 0;
  for (let at = minute * MEMBERS; at < (minute + 1) * MEMBERS; at++) {
    const tempC = looked.tempC[at]!;
    const out = looked.nearlyOut[at] === 1;
    if (tempC < lowC) below++;
    if (tempC > highC) above++;
    if (out) nearlyOut++;
    if (out || tempC < lowC - TROUBLE_K) trouble++;
  }
  return { below: below / MEMBERS, trouble: trouble / MEMBERS, nearlyOut: nearlyOut / MEMBERS, above: above / MEMBERS };
}

/**
 * When something begins that holds minute by minute from now on in `ahead`. If it holds now and began after the last look, then it
 * began in the past. If the last look found it so already, what counts is the next beginning after it has passed; and if it
 * never passes, a quarter of an hour after the look.
 */
function onsetAt(belief: FireBelief, lastLookAt: EpochS, ahead: readonly boolean[], held: (row: number) => boolean): EpochS | undefined {
  const minuteAt = (minute: number) => (minute < 0 ? undefined : later(belief.at, minute * 60));
  if (ahead[0] !== true) return minuteAt(ahead.indexOf(true));
  let since: EpochS = belief.at;
  let sinceLook = true;
  for (let row = belief.past.length - PAST_NUMBERS; row >= 0 && belief.past[row]! > lastLookAt; row -= PAST_NUMBERS) {
    sinceLook = held(row);
    if (!sinceLook) break;
    since = belief.past[row]! as EpochS;
  }
  if (!sinceLook) return since;
  const passes = ahead.indexOf(false);
  return passes < 0 ? later(lastLookAt, NO_RECOVERY_S) : minuteAt(ahead.indexOf(true, passes));
}
