import type { FirePage, LearnedView, ToldCheck } from '@stokehold/domain/contract';
import { checkOutcome, forecastErrors, type Happened, type KeptForecast, skillOf } from '@stokehold/domain/fire';
import { type EpochS, fromIso, HOUR_S, later, MINUTE_S, type PitId, toIso } from '@stokehold/domain/quantity';
import type { UnusedReading } from './fire-estimate.row.js';
import type { LinePoint, PitNight, SetBack, Told } from './told.store.js';

/** What is known of one fire over one night, before it is held against itself. */
export interface NightKnown {
  readonly pitId: PitId;
  readonly now: EpochS;
  readonly night: PitNight | undefined;
  readonly nights: readonly PitNight[];
  readonly line: readonly LinePoint[];
  readonly told: readonly Told[];
  /** When somebody changed something at the fire. */
  readonly touches: readonly EpochS[];
  readonly course: readonly (LearnedView & { readonly at: EpochS })[];
  readonly setBacks: readonly SetBack[];
  readonly unused: readonly (UnusedReading & { readonly at: EpochS })[];
}

/** At these reaches every check is held against what came; and at each of these every moment counts for the fan's promise. */
const LEADS_S = [15, 30, 60, 90].map((minutes) => minutes * MINUTE_S);
const EVERY_S = 2 * MINUTE_S;
const QUARTER_S = 15 * MINUTE_S;
/** A measurement this near to an instant counts as of it. */
const NEAR_S = 2 * MINUTE_S;
/** A fire that is being lit is forecast by its lighting alone: the first hour is shown and not counted. */
const COUNTED_AFTER_S = HOUR_S;
/** Two ends that agree so nearly and are both not believed are no failing probe: then the belief is wrong, and must be seen to be. */
const ENDS_AGREE_K = 25;
/** Unused readings further apart are two stretches. */
const APART_S = 10 * MINUTE_S;

/** The page of one fire: a pure function of what is stored. */
export function firePageOf(known: NightKnown): FirePage {
  const line = known.line.map(shownBy);
  const happened = line.filter(({ measured }) => measured);
  const kept = known.told.map((told) => keptForecastOf(told, happened));
  const counted = kept.filter(({ from }) => known.night === undefined || from >= later(known.night.lightAt, COUNTED_AFTER_S));
  const errorsAt = (leadsS: readonly number[], forecasts: readonly KeptForecast[] = counted) =>
    forecastErrors({ forecasts, happened, looks: known.touches, leadsS });
  const all = errorsAt(everyLead(counted));
  const lastSetBack = known.setBacks.at(-1)?.at ?? -Infinity;
  const learnedNow = known.course.filter(({ at }) => at > lastSetBack).at(-1);
  return {
    pitId: known.pitId,
    night: known.night ? { shiftId: known.night.shiftId, from: toIso(known.night.lightAt), until: toIso(known.night.endsAt), band: known.night.band } : null,
    nights: known.nights.map(({ shiftId, startsAt }) => ({ shiftId, startsAt: toIso(startsAt) })),
    line: line.map(({ at, tempC, measured }) => ({ at: toIso(at), tempC, measured })),
    told: known.told.map((told, nth) => ({
      ...toldCheckOf(told, errorsAt(LEADS_S, [kept[nth]!]), kept[nth]!, known),
      outcome: outcomeOf(kept[nth]!, known.told[nth + 1]?.lookedAt, happened, known),
    })),
    skill: skillOf(errorsAt(LEADS_S)).map((skill) => ({
      aheadS: skill.leadS, count: skill.count, errorK: skill.rmseK, persistenceErrorK: skill.persistenceRmseK,
      trendErrorK: skill.trendRmseK ?? null, insideFrac: skill.coveredFrac,
    })),
    inside: all.length > 0 ? { count: all.length, insideFrac: all.filter(({ covered }) => covered).length / all.length } : null,
    learned: {
      now: learnedNow ? learnedOf(learnedNow) : null,
      course: known.course.map((point) => ({ ...learnedOf(point), at: toIso(point.at) })),
      setBacks: known.setBacks.map(({ at, by, reason }) => ({ at: toIso(at), by, reason })),
    },
    unused: stretchesOf(known.unused),
  };
}

/** What the probes showed, also where they were not believed and agreed with each other. */
function shownBy(point: LinePoint): LinePoint {
  const [one, other] = point.unused.flatMap(({ tempC }) => tempC ?? []);
  if (point.measured || one === undefined || other === undefined || Math.abs(one - other) > ENDS_AGREE_K) return point;
  return { ...point, tempC: (one + other) / 2, measured: true };
}

/** The two sides of a check at the next look, or now. */
function outcomeOf(kept: KeptForecast, nextLook: EpochS | undefined, happened: readonly Happened[], { now, night }: NightKnown): ToldCheck['outcome'] {
  const until = nextLook ?? now;
  if (!night || until <= kept.from) return null;
  const { cameTempC, forecastTempC, leavesAt, leftAt } = checkOutcome({ kept, until, happened, band: night.band });
  if (cameTempC === undefined || forecastTempC === undefined) return null;
  return { at: toIso(until), cameC: cameTempC, wasToLeaveAt: leavesAt === undefined ? null : toIso(leavesAt), leftAt: leftAt === undefined ? null : toIso(leftAt) };
}

const learnedOf = ({ loss, burn, coal }: LearnedView): LearnedView => ({ loss, burn, coal });

/** All steps of the longest fan, now left out. */
function everyLead(kept: readonly KeptForecast[]): number[] {
  const longestS = Math.max(0, ...kept.map(({ p50, stepS }) => (p50.length - 1) * stepS));
  return Array.from({ length: Math.floor(longestS / EVERY_S) }, (_, nth) => (nth + 1) * EVERY_S);
}

const nearest = (happened: readonly Happened[], at: EpochS) =>
  happened.filter((one) => Math.abs(one.at - at) <= NEAR_S).sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0]?.tempC;

/** A forecast with where the chamber stood then: as measured, or where nothing was, as believed. */
function keptForecastOf({ fan }: Told, happened: readonly Happened[]): KeptForecast {
  const from = fromIso(fan.from);
  const quarterBefore = nearest(happened, later(from, -QUARTER_S));
  return {
    from, stepS: fan.stepS, p10: fan.p10, p50: fan.p50, p90: fan.p90,
    tempC: nearest(happened, from) ?? fan.p50[0] ?? 0,
    ...(quarterBefore !== undefined && { quarterBeforeTempC: quarterBefore }),
  };
}

function toldCheckOf(told: Told, errors: ReturnType<typeof forecastErrors>, kept: KeptForecast, { now, touches }: NightKnown): Omit<ToldCheck, 'outcome'> {
  const touched = touches.find((at) => at > kept.from);
  return {
    checkId: told.checkId,
    lookedAt: toIso(told.lookedAt),
    advised: told.advised,
    fan: told.fan,
    points: LEADS_S.map((aheadS) => {
      const at = later(kept.from, aheadS);
      const error = errors.find(({ leadS }) => leadS === aheadS);
      if (error) return { aheadS, cameC: kept.tempC - error.persistenceK, uncompared: null };
      return { aheadS, cameC: null, uncompared: touched !== undefined && touched < at ? 'touched' : at > now ? 'to-come' : 'not-measured' };
    }),
  };
}

function stretchesOf(unused: NightKnown['unused']): FirePage['unused'] {
  const stretches: { from: EpochS; until: EpochS; end: UnusedReading['end']; why: UnusedReading['why']; count: number }[] = [];
  for (const { at, end, why } of unused) {
    const open = stretches.filter((one) => one.end === end && one.why === why).at(-1);
    if (open && at - open.until <= APART_S) Object.assign(open, { until: at, count: open.count + 1 });
    else stretches.push({ from: at, until: at, end, why, count: 1 });
  }
  return stretches.map(({ from, until, ...rest }) => ({ ...rest, from: toIso(from), until: toIso(until) }));
}
