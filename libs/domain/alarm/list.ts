/** Everything that may call for somebody at night. A due check is none of them: it is a prompt. */
export const ALARM_KINDS = [
  'running-away', 'bed-nearly-out', 'food-limit', 'past-latest-safe', 'above-band', 'below-band', 'gust-ahead', 'probe-failed', 'gateway-silent', 'wood-short',
] as const;
export type AlarmKind = (typeof ALARM_KINDS)[number];

/** What an alarm is worth, the most pressing first. */
export const ALARM_PRIORITIES = ['critical', 'high', 'medium', 'low'] as const;
export type AlarmPriority = (typeof ALARM_PRIORITIES)[number];

/** Who is called: the person who has the pit, the shift leads, everyone who is there. */
export const TIERS = ['holder', 'lead', 'everyone'] as const;
export type Tier = (typeof TIERS)[number];

/** One line of the rationalised list. Cause, consequence and what to do stand in words under the alarm's kind, in both languages. */
export interface ListedAlarm {
  readonly priority: AlarmPriority;
  /** From the call until it is too late to help, s. */
  readonly timeToActS: number;
  /** Who is called first, and who is added so long after the call when nobody took note, s. */
  readonly tellFirst: Tier;
  readonly leadAfterS?: number | undefined;
  readonly everyoneAfterS?: number | undefined;
  /** After somebody took note, it calls again while its condition holds, s. */
  readonly remindAfterS?: number | undefined;
  /** The longest it may be shelved; left out where nobody may, s. */
  readonly longestShelfS?: number | undefined;
  /** The condition must hold so long before it is raised, and be gone so long before it ends, s. */
  readonly onDelayS: number;
  readonly offDelayS: number;
  /** Once raised it stands at least so long, s. */
  readonly leastS: number;
  /** Whether a check that was just made, or that is due, keeps it from calling. */
  readonly suppressedByCheck: boolean;
  /** Alarms of the same pit (for a gateway: of the yard) that are only its consequence and stand under it. */
  readonly covers: readonly AlarmKind[];
}

/**
 * The rationalised list. Source: our own choice after [IEC62682]; shelving, reminders, delays of the band alarms, and their silence
 * after a check as the yard's targets have them. Burning grease hurts people; a coal bed once lost costs the night.
 */
export const ALARM_LIST: Readonly<Record<AlarmKind, ListedAlarm>> = {
  // Grease burns, or a door stands open to the wind: the pit is lost, people are hurt.
  'running-away': {
    priority: 'critical', timeToActS: 60, tellFirst: 'everyone', remindAfterS: 120, onDelayS: 0, offDelayS: 0, leastS: 900, suppressedByCheck: false,
    covers: ['above-band', 'below-band', 'past-latest-safe', 'probe-failed'],
  },
  // Nobody fed it in time: the fire goes out, and lighting it anew costs two hours of the cook.
  'bed-nearly-out': {
    priority: 'high', timeToActS: 600, tellFirst: 'holder', leadAfterS: 180, everyoneAfterS: 420, remindAfterS: 600, longestShelfS: 900, onDelayS: 0, offDelayS: 0, leastS: 0, suppressedByCheck: false,
    covers: ['past-latest-safe', 'below-band'],
  },
  // Food stood too long in between: it has to be thrown away. A food-safety alarm is never shelved.
  'food-limit': { priority: 'high', timeToActS: 1800, tellFirst: 'holder', leadAfterS: 300, everyoneAfterS: 900, remindAfterS: 600, onDelayS: 0, offDelayS: 0, leastS: 0, suppressedByCheck: false, covers: [] },
  // The round is behind: the band or the bed is lost soon.
  'past-latest-safe': {
    priority: 'medium', timeToActS: 600, tellFirst: 'holder', leadAfterS: 300, everyoneAfterS: 600, remindAfterS: 600, longestShelfS: 900, onDelayS: 0, offDelayS: 0, leastS: 0, suppressedByCheck: false,
    covers: ['above-band', 'below-band'],
  },
  // Too much wood, too much air, wind onto the firebox: the bark burns and the fat renders out.
  'above-band': {
    priority: 'low', timeToActS: 900, tellFirst: 'holder', leadAfterS: 900, longestShelfS: 3600, onDelayS: 60, offDelayS: 60, leastS: 0, suppressedByCheck: true, covers: [],
  },
  // Too little fire, a wet split, rain: the cook falls behind its service.
  'below-band': {
    priority: 'low', timeToActS: 900, tellFirst: 'holder', leadAfterS: 900, longestShelfS: 3600, onDelayS: 60, offDelayS: 60, leastS: 0, suppressedByCheck: true, covers: [],
  },
  // Wind is forecast onto a firebox or a stack: the fire runs hot or smokes back.
  'gust-ahead': { priority: 'low', timeToActS: 900, tellFirst: 'holder', leadAfterS: 900, longestShelfS: 3600, onDelayS: 0, offDelayS: 0, leastS: 1800, suppressedByCheck: false, covers: [] },
  // A wire is broken or a probe lies in the wrong place: the fire is reckoned from looks alone.
  'probe-failed': { priority: 'low', timeToActS: 1800, tellFirst: 'holder', leadAfterS: 1800, longestShelfS: 14_400, onDelayS: 0, offDelayS: 0, leastS: 300, suppressedByCheck: false, covers: [] },
  // The gateway lost its power or its network: no probe is read.
  'gateway-silent': { priority: 'medium', timeToActS: 1800, tellFirst: 'lead', everyoneAfterS: 1800, longestShelfS: 14_400, onDelayS: 0, offDelayS: 0, leastS: 0, suppressedByCheck: false, covers: ['probe-failed'] },
  // More was burned than planned, or less was brought: the last fires go without.
  'wood-short': { priority: 'low', timeToActS: 7200, tellFirst: 'lead', longestShelfS: 14_400, onDelayS: 0, offDelayS: 0, leastS: 0, suppressedByCheck: false, covers: [] },
};

/** Back inside its band is a chamber by the larger of 1 K and three standard deviations of its noise, and never by so much that it could not. */
export const BAND_DEADBAND = { leastK: 1, noiseSds: 3, mostFrac: 0.3 } as const;
/** Wood is enough again when it is more than needed by this much: the need is an estimate and moves about. */
export const WOOD_DEADBAND = { splits: 2, frac: 0.05 } as const;
/** So long after a check, and so long before one is due, what a check mends does not call. Source: our own choice. */
export const QUIET_AFTER_CHECK_S = 300;
export const QUIET_BEFORE_CHECK_S = 300;

/** The most pressing first, of those the one that was raised first. */
export const byPriority = (a: { readonly kind: AlarmKind; readonly raisedAt: number }, b: { readonly kind: AlarmKind; readonly raisedAt: number }): number =>
  rank(a.kind) - rank(b.kind) || ALARM_KINDS.indexOf(a.kind) - ALARM_KINDS.indexOf(b.kind) || a.raisedAt - b.raisedAt;
const rank = (kind: AlarmKind) => ALARM_PRIORITIES.indexOf(ALARM_LIST[kind].priority);
