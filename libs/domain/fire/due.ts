import { clamp, type EpochS, later } from '../quantity/index.js';
import { chamberK } from './advance.js';
import { type FireBelief, memberAt, MEMBERS, PAST_NUMBERS } from './belief.js';
import { modeOf } from './estimate.js';
import { bedNearlyOut } from './grades.js';
import type { Band, Surroundings } from './pit.js';
import { rollMinute, startRoll } from './roll.js';

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

const HORIZON_MIN = 120;
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
/** A belief counts as measured while its last temperature is younger than this. */
const FRESH_S = 15 * 60;

interface Onset {
  /** From when on more than half lie below the band without a break until they are seen to; and from when on more than 5 % are in trouble. */
  readonly belowAt?: EpochS;
  readonly troubleAt?: EpochS;
  readonly bedFirst: boolean;
  readonly hot: boolean;
}

/**
 * Due and latest safe of the next look. Due: half of the members below the band. Latest safe: more than one in twenty
 * 15 °F below it, or with the bed nearly out. What has begun in the past keeps its time, so that an overdue fire stays overdue.
 *
 * @param ask.lastLookAt  the last fire check, or the lighting
 * @returns lastLookAt < earliestAt <= dueAt <= latestSafeAt
 */
export function dueOf(belief: FireBelief, ask: Surroundings & { readonly band: Band; readonly lastLookAt: EpochS }): Due {
  const { lastLookAt } = ask;
  const onset = onsetOf(belief, ask);
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

function onsetOf(belief: FireBelief, ask: Surroundings & { readonly band: Band; readonly lastLookAt: EpochS }): Onset {
  const { lowC, highC } = ask.band;
  const roll = startRoll(belief, ask, MEMBERS, HORIZON_MIN);
  const shares = () => {
    let below = 0, trouble = 0, nearlyOut = 0, above = 0;
    for (let m = 0; m < MEMBERS; m++) {
      const tempC = chamberK(roll.start.x, memberAt(m)) - 273.15;
      const out = bedNearlyOut(roll.p, roll.start.x, memberAt(m));
      below += tempC < lowC ? 1 : 0;
      above += tempC > highC ? 1 : 0;
      trouble += out || tempC < lowC - TROUBLE_K ? 1 : 0;
      nearlyOut += out ? 1 : 0;
    }
    return { below: below / MEMBERS, trouble: trouble / MEMBERS, nearlyOut: nearlyOut / MEMBERS, above: above / MEMBERS };
  };
  const now = shares();
  const belowSince = now.below > 0.5 ? sinceInPast(belief, ask.lastLookAt, (row) => belief.past[row + 1]! < lowC) : undefined;
  const inTrouble = (row: number) => belief.past[row + 2]! < lowC - TROUBLE_K || belief.past[row + 3]! > TROUBLE_SHARE;
  const troubleSince = now.trouble > TROUBLE_SHARE ? sinceInPast(belief, ask.lastLookAt, inTrouble) : undefined;
  let belowAt = belowSince;
  let troubleAt = troubleSince;
  let bedFirst = now.nearlyOut > TROUBLE_SHARE;
  for (let minute = 0; minute < HORIZON_MIN && (belowAt === undefined || troubleAt === undefined); minute++) {
    rollMinute(roll, roll.start, minute);
    const then = shares();
    if (belowAt === undefined && then.below > 0.5) belowAt = later(belief.at, (minute + 1) * 60);
    if (troubleAt === undefined && then.trouble > TROUBLE_SHARE) {
      troubleAt = later(belief.at, (minute + 1) * 60);
      bedFirst = then.nearlyOut > TROUBLE_SHARE;
    }
  }
  return {
    ...(belowAt === undefined ? {} : { belowAt }),
    ...(troubleAt === undefined ? {} : { troubleAt }),
    bedFirst,
    hot: now.above > 0.5,
  };
}

/** Start of the unbroken run, up to now and since the last look, in which something held; the belief's instant when it began just now. */
function sinceInPast(belief: FireBelief, lastLookAt: EpochS, held: (row: number) => boolean): EpochS {
  let since = belief.at;
  for (let row = belief.past.length - PAST_NUMBERS; row >= 0; row -= PAST_NUMBERS) {
    if (belief.past[row]! <= lastLookAt || !held(row)) break;
    since = belief.past[row]! as EpochS;
  }
  return since;
}
