import type { EpochS, PersonId, PitId } from '../quantity/index.js';
import { ALARM_LIST, ALARM_PRIORITIES, type AlarmKind, type AlarmPriority } from './list.js';

/** One alarm as it was called to people; `until` is when its condition ended, absent while it holds. */
export interface Called {
  readonly alarmId: string;
  readonly at: EpochS;
  readonly kind: AlarmKind;
  readonly pitId: PitId | null;
  readonly people: readonly PersonId[];
  readonly until?: EpochS | undefined;
}

/** Limits of the measured report, per person. Source: history and audits of alarm figures after [IEC62682] and [EEMUA191], through public descriptions. */
export const RATE_TARGETS = {
  /** In ten minutes, on average; and never more than. */
  meanPerTenMinutes: 1, mostPerTenMinutes: 10,
  /** More than ten in ten minutes begins a flood, under five ends it; share of the night in flood. */
  floodFrac: 0.01,
  /** A quiet night of twelve hours, our own choice. */
  quietNight: 20,
  /** The ten most frequent alarms' share of all. */
  badActorFrac: 0.2,
  /** Shares of the priorities low, medium, high, critical. */
  priorityFrac: { low: 0.8, medium: 0.15, high: 0.05, critical: 0.01 },
  chattering: 0, fleeting: 0, standing: 5,
} as const;

const WINDOW_S = 600;
const FLOOD_BEGINS = 10;
const FLOOD_ENDS = 5;
/** In and out three times in a minute chatters; over in so few seconds is fleeting; on for a day stands. */
const CHATTERS = 3;
const CHATTER_S = 60;
const FLEETING_S = 15;
const STANDING_S = 86_400;

export interface PersonRate {
  readonly personId: PersonId;
  readonly calls: number;
  readonly meanPerTenMinutes: number;
  readonly mostInTenMinutes: number;
}
export interface BadActor {
  readonly kind: AlarmKind;
  readonly pitId: PitId | null;
  readonly calls: number;
  readonly frac: number;
}
export interface AlarmRates {
  readonly calls: number;
  readonly people: readonly PersonRate[];
  readonly badActors: readonly BadActor[];
  readonly priorityFrac: Readonly<Record<AlarmPriority, number>>;
  readonly floodFrac: number;
  readonly chattering: number;
  readonly fleeting: number;
  readonly standing: number;
}

/**
 * What a night's alarms came to: by person, by alarm, in floods. The flood of whoever was flooded longest counts. Windows of ten minutes slide from call to call.
 * Held to rates.test.ts, against counts by hand.
 */
export function ratesOf(called: readonly Called[], span: { readonly from: EpochS; readonly until: EpochS }): AlarmRates {
  const calls = called.filter(({ at }) => at >= span.from && at <= span.until).sort((a, b) => a.at - b.at);
  const spanS = Math.max(WINDOW_S, span.until - span.from);
  const people = [...new Set(calls.flatMap((one) => one.people))].map((personId): PersonRate => {
    const own = calls.filter((one) => one.people.includes(personId)).map(({ at }) => at);
    return { personId, calls: own.length, meanPerTenMinutes: (own.length * WINDOW_S) / spanS, mostInTenMinutes: mostWithin(own, WINDOW_S) };
  });
  const alarms = [...new Map(calls.map((one) => [one.alarmId, one])).values()];
  const floodS = Math.max(0, ...people.map(({ personId }) => inFloodS(calls.filter((one) => one.people.includes(personId)).map(({ at }) => at), span.until)));
  return {
    calls: calls.length,
    people: people.sort((a, b) => b.calls - a.calls || (a.personId < b.personId ? -1 : 1)),
    badActors: badActorsOf(calls),
    priorityFrac: Object.fromEntries(ALARM_PRIORITIES.map((priority) => [priority, share(calls, (one) => ALARM_LIST[one.kind].priority === priority)])) as Record<AlarmPriority, number>,
    floodFrac: floodS / spanS,
    chattering: chatteringOf(calls),
    fleeting: alarms.filter(({ at, until }) => until !== undefined && until - at <= FLEETING_S).length,
    standing: alarms.filter(({ at, until }) => (until ?? span.until) - at > STANDING_S).length,
  };
}

const share = (calls: readonly Called[], is: (one: Called) => boolean) => (calls.length === 0 ? 0 : calls.filter(is).length / calls.length);
const subjectOf = ({ kind, pitId }: Called) => `${kind} ${pitId ?? ''}`;

/** Most instants within a stretch of `spanS`, wherever it begins. */
function mostWithin(instants: readonly EpochS[], spanS: number): number {
  let most = 0;
  let first = 0;
  for (let nth = 0; nth < instants.length; nth++) {
    while (instants[nth]! - instants[first]! >= spanS) first++;
    most = Math.max(most, nth - first + 1);
  }
  return most;
}

function badActorsOf(calls: readonly Called[]): BadActor[] {
  const counted = new Map<string, { readonly one: Called; calls: number }>();
  for (const one of calls) {
    const known = counted.get(subjectOf(one));
    if (known) known.calls += 1;
    else counted.set(subjectOf(one), { one, calls: 1 });
  }
  const all = [...counted.values()].sort((a, b) => b.calls - a.calls || (subjectOf(a.one) < subjectOf(b.one) ? -1 : 1));
  return all.slice(0, 10).map(({ one, calls: count }) => ({ kind: one.kind, pitId: one.pitId, calls: count, frac: count / calls.length }));
}

/** A flood begins with more than ten calls in ten minutes and is over when fewer than five came in ten. */
function inFloodS(instants: readonly EpochS[], until: EpochS): number {
  let floodS = 0;
  let since: EpochS | undefined;
  const within = (at: number) => instants.filter((one) => one > at - WINDOW_S && one <= at).length;
  for (const at of instants) {
    if (since === undefined && within(at) > FLOOD_BEGINS) since = at;
    if (since === undefined || within(at) >= FLOOD_ENDS) continue;
    floodS += at - since;
    since = undefined;
  }
  return floodS + (since === undefined ? 0 : Math.min(until, instants.at(-1)! + WINDOW_S) - since);
}

function chatteringOf(calls: readonly Called[]): number {
  const bySubject = new Map<string, EpochS[]>();
  for (const one of calls) bySubject.set(subjectOf(one), [...(bySubject.get(subjectOf(one)) ?? []), one.at]);
  return [...bySubject.values()].filter((instants) => mostWithin(instants, CHATTER_S + 1) >= CHATTERS).length;
}
