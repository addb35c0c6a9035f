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

export interface DueAsk {
  readonly band: Band;
  /** The last fire check, or the lighting. */
  readonly lastLookAt: EpochS;
  /** When the advice of that check wanted somebody back: an earlier time may call, a later one is not waited for. */
  readonly lookAgainAt?: EpochS | undefined;
}

/** How far a due time looks ahead. */
export const HORIZON_MIN = 120;
/** By then every fire is due, for nobody stays away so long. */
const SURELY_DUE_MIN = 60;
/** So far below the band is trouble, K: 15 °F. Source: our fit. */
const TROUBLE_K = 8.33;
/** A plan may let the edge of the band go by for a while: colder than it by this calls before the plan does, K. Source: our fit. */
const COLD_K = 2;
/** So far above the band somebody should come and choke the fire, K. Source: our fit. */
const HOT_K = 5;
/** Of the members, so many may be in trouble before it is too late. Source: our fit, tests/bench/fire-skill.mjs. */
const TROUBLE_SHARE = 0.05;
/** Nobody stays away longer, s, however well a fire burns; and no longer with nothing measured since. Source: common practice, no source (about every half hour). */
const LONGEST_AWAY_S = 50 * 60;
const LONGEST_BLIND_S = 30 * 60;
const LONGEST_BY_HAND_S = 38 * 60;
const FIRST_LOOK_S = 20 * 60;
/** A look within this of the last one tells nothing new; at the latest this long before the fire is due is early enough. Source: our fit. */
const SHORTEST_AWAY_S = 5 * 60;
/** Wood and door take so long to show what they do: before that a temperature outside the band calls nobody back, s. Source: our fit, P7. */
const ACTS_S = 15 * 60;
const EARLY_S = 10 * 60;
/** A fire that was out of the band at the look and will not come back by itself: look again after, s. Source: our fit. */
const NO_RECOVERY_S = 15 * 60;
/** A belief counts as measured while its last temperature is younger than this. */
const FRESH_S = 15 * 60;

/**
 * Due and latest safe of the next look. Due: half of the members below the band. Latest safe: more than one in twenty
 * 15 °F below it, or with the bed nearly out. What has begun in the past keeps its time, so that an overdue fire stays overdue.
 *
 * @returns lastLookAt < earliestAt <= dueAt <= latestSafeAt
 */
export function dueOf(belief: FireBelief, ask: Surroundings & DueAsk): Due {
  return dueFrom(belief, ask, lookAhead(belief, ask, SURELY_DUE_MIN, { most: HORIZON_MIN, isWanted: (seen) => !troubleBegins(seen, ask.band) }));
}

/** Whether a look ahead sees a fire that is well now come into trouble: what comes after that changes no due time. */
export function troubleBegins(ahead: Ahead, band: Band): boolean {
  const isTrouble = (minute: number) => sharesOf(ahead, minute, band, band.lowC).trouble > TROUBLE_SHARE;
  if (isTrouble(0)) return false;
  for (let minute = ahead.minutes; minute > 0; minute--) if (isTrouble(minute)) return true;
  return false;
}

/** The due time from a look ahead of two hours, or of the hour by which the fire is due if trouble begins in it. */
export function dueFrom(belief: FireBelief, ask: DueAsk, ahead: Ahead): Due {
  const { lastLookAt } = ask;
  const onset = onsetOf(belief, ask, ahead);
  const away = longestAwayS(belief, lastLookAt);
  const byLook = later(lastLookAt, onset.hot && !belief.ungraded ? Math.min(away, LONGEST_BLIND_S) : away);
  const never = later(belief.at, HORIZON_MIN * 60);
  const acted = (at: EpochS | undefined) => later(Math.max(at ?? never, lastLookAt + ACTS_S) as EpochS, 0);
  const byHeat = acted(onset.aboveAt);
  const byBand = later(Math.min(acted(onset.belowAt), ask.lookAgainAt ?? Infinity, byHeat) as EpochS, 0);
  const byTrouble = onset.troubleAt ?? never;
  const starting = modeOf(belief) === 'start-up';
  const wanted = starting ? Math.min(byLook, lastLookAt + FIRST_LOOK_S, byHeat, ask.lookAgainAt ?? Infinity) : Math.min(byLook, byBand, byTrouble);
  const dueAt = later(Math.max(wanted, lastLookAt + SHORTEST_AWAY_S) as EpochS, 0);
  const earliestAt = later(clamp(dueAt - EARLY_S, lastLookAt + 1, dueAt) as EpochS, 0);
  const latestSafeAt = later(Math.max(dueAt, starting ? byLook + EARLY_S : byTrouble) as EpochS, 0);
  const why: DueWhy = starting
    ? 'start-up'
    : byTrouble < Math.min(byBand, byLook) && onset.bedFirst
      ? 'bed'
      : byLook < byBand
        ? onset.hot ? 'hot' : 'last-look'
        : byHeat <= byBand ? 'hot' : 'band';
  return { earliestAt, dueAt, latestSafeAt, why };
}

/** Longest with probes that go on measuring, shorter where the last look read the gauges, shortest where nothing is measured. */
function longestAwayS(belief: FireBelief, lastLookAt: EpochS): number {
  if (belief.ungraded) return FIRST_LOOK_S;
  const { lastTempAt } = belief;
  if (lastTempAt !== undefined && belief.at - lastTempAt <= FRESH_S && lastTempAt > lastLookAt) return LONGEST_AWAY_S;
  return lastTempAt !== undefined && lastTempAt >= lastLookAt ? LONGEST_BY_HAND_S : LONGEST_BLIND_S;
}

interface Onset {
  /** When the middle falls below the band; when more than one in twenty is in trouble. */
  readonly belowAt: EpochS | undefined;
  readonly troubleAt: EpochS | undefined;
  /** When the middle runs so far above the band that somebody should choke it. */
  readonly aboveAt: EpochS | undefined;
  readonly bedFirst: boolean;
  readonly hot: boolean;
}

function onsetOf(belief: FireBelief, ask: DueAsk, looked: Ahead): Onset {
  const { lowC } = ask.band;
  const calledC = lowC - (ask.lookAgainAt === undefined ? 0 : COLD_K);
  const below: boolean[] = [];
  const trouble: boolean[] = [];
  const above: boolean[] = [];
  let bedFirst = false;
  let hot = false;
  for (let minute = 0; minute <= looked.minutes; minute++) {
    const share = sharesOf(looked, minute, ask.band, calledC);
    bedFirst ||= share.nearlyOut > TROUBLE_SHARE && !trouble.includes(true);
    below.push(share.below > 0.5);
    trouble.push(share.trouble > TROUBLE_SHARE);
    above.push(share.hot > 0.5);
    if (minute === 0) hot = share.above > 0.5;
  }
  const wasBelow = (row: number) => belief.past[row + 1]! < calledC;
  const wasTrouble = (row: number) => belief.past[row + 2]! < lowC - TROUBLE_K || belief.past[row + 3]! > TROUBLE_SHARE;
  const wasAbove = (row: number) => belief.past[row + 1]! > ask.band.highC + HOT_K;
  const onset = (held: readonly boolean[], was: (row: number) => boolean) => onsetAt(belief, ask.lastLookAt, held, was);
  return { belowAt: onset(below, wasBelow), troubleAt: onset(trouble, wasTrouble), aboveAt: onset(above, wasAbove), bedFirst, hot };
}

/** Shares of the members that in that minute are below the band, above it, far above it, in trouble, and in trouble for their bed. */
function sharesOf(looked: Ahead, minute: number, { lowC, highC }: Band, calledC: number) {
  let below = 0, trouble = 0, nearlyOut = 0, above = 0, hot = 0;
  for (let at = minute * MEMBERS; at < (minute + 1) * MEMBERS; at++) {
    const tempC = looked.tempC[at]!;
    const out = looked.nearlyOut[at] === 1;
    if (tempC < calledC) below++;
    if (tempC > highC) above++;
    if (tempC > highC + HOT_K) hot++;
    if (out) nearlyOut++;
    if (out || tempC < lowC - TROUBLE_K) trouble++;
  }
  return { below: below / MEMBERS, trouble: trouble / MEMBERS, nearlyOut: nearlyOut / MEMBERS, above: above / MEMBERS, hot: hot / MEMBERS };
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
