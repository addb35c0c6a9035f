import { type EpochS, later, ok, refuse, type Result } from '../quantity/index.js';
import type { CookRefusal, CoreReading, DoneTime, FoodCook, ReadingVerdict } from './cook.js';
import { doneByFrac, refusalOf, rolledOut } from './done-time.js';
import { fToC } from './history.js';
import { type Lesson, lessonOf } from './lesson.js';
import { type Carried, seeReadings } from './see-readings.js';
import { type Change, whatIf } from './what-if.js';

/** A done time in the few figures that a screen shows. */
export interface DoneInShort extends Pick<DoneTime, 'neverFrac' | 'phase' | 'core'> {
  readonly p10At?: EpochS;
  readonly p50At?: EpochS;
  readonly p90At?: EpochS;
  readonly p95At?: EpochS;
  /** Middle of the core now. */
  readonly coreC?: number;
  readonly wrapAt?: EpochS;
  readonly hotYieldFrac: number;
  /** When the core is past 130 °F nine times in ten. */
  readonly upperAt?: EpochS;
  readonly verdicts: readonly ReadingVerdict[];
}

/** First time at which a line of the fan has risen to a temperature. */
function risesTo({ from, stepS, p10 }: DoneTime['core'], tempC: number): EpochS | undefined {
  const place = p10.findIndex((value) => value >= tempC);
  return place < 0 ? undefined : later(from, place * stepS);
}
const at = <K extends string>(key: K, value: EpochS | undefined) => (value === undefined ? {} : ({ [key]: value } as Record<K, EpochS>));

/** A done time as a screen shows it. Source: `forecastDone`. */
export function inShort(done: DoneTime, now: EpochS): DoneInShort {
  const { core, neverFrac, phase, verdicts, hotYieldFrac, wrapAfterS, onAt } = done;
  const coreC = core.p50[Math.min(core.p50.length - 1, Math.max(0, Math.round((now - core.from) / core.stepS)))];
  return {
    neverFrac, phase, verdicts, core, hotYieldFrac: hotYieldFrac.p50, ...at('p10At', doneByFrac(done, 0.1)), ...at('p50At', doneByFrac(done, 0.5)), ...at('p90At', doneByFrac(done, 0.9)),
    ...at('p95At', doneByFrac(done, 0.95)), ...(coreC !== undefined && { coreC }), ...at('wrapAt', wrapAfterS && later(onAt, wrapAfterS.p50)), ...at('upperAt', risesTo(core, fToC(130))),
  };
}

/** As far off as a probe in meat may be, K: a reading so near says what was forecast. Source: our choice, as for the readings themselves. */
const AS_FORECAST_K = 1.5;
/** In its last hour a cook is forecast anew whatever is read, s. Source: our choice. */
const LAST_S = 3600;

/**
 * Whether what was read since a forecast ran as it said, so that another would say the same: every reading near the middle of the fan,
 * and done not yet near. Source: our choice.
 */
export function ranAsForecast({ core, p50At }: DoneInShort, readings: readonly CoreReading[], now: EpochS): boolean {
  if (p50At !== undefined && p50At - now < LAST_S) return readings.length === 0;
  return readings.every(({ at, tempC }) => {
    const said = core.p50[Math.round((at - core.from) / core.stepS)];
    return said !== undefined && Math.abs(tempC - said) <= AS_FORECAST_K;
  });
}

/** A cook to be forecast, with what the last look at it left; absent: it starts anew, with the same answer. */
export interface ToForecast {
  readonly cook: FoodCook;
  readonly carried?: Carried;
}
/** A forecast, with what the next look can go on from. */
export interface Forecast {
  readonly done: Result<DoneInShort, CookRefusal>;
  readonly carried?: Carried;
}

/** Every cook on hand, each by itself: the work of a thread. Source: `forecastDone`. */
export const forecastAll = (ask: { readonly cooks: readonly ToForecast[]; readonly now: EpochS }): readonly Forecast[] =>
  ask.cooks.map(({ cook, carried: before }) => {
    const refusal = refusalOf(cook);
    if (refusal) return { done: refuse(refusal) };
    const { carried, ...seen } = seeReadings(cook, ask.now, before);
    return { done: ok(inShort(rolledOut(seen, ask.now), ask.now)), ...(carried && { carried }) };
  });

/** What finished cooks teach, each by itself. Source: `lessonOf`. */
export const lessonsOf = (ask: { readonly finished: readonly { readonly cook: FoodCook; readonly offAt: EpochS }[] }): readonly Result<Lesson, CookRefusal>[] =>
  ask.finished.map(({ cook, offAt }) => lessonOf(cook, offAt));

/** A change to one cook, in short. Source: `whatIf`. */
export function whatIfInShort(ask: { readonly cook: FoodCook; readonly now: EpochS; readonly change: Change }) {
  const answer = whatIf(ask.cook, ask.now, ask.change);
  if (!answer.ok) return answer;
  const { middleS, lateS, after } = answer.value;
  return { ok: true as const, value: { middleS, lateS, p50At: doneByFrac(after, 0.5), p95At: doneByFrac(after, 0.95) } };
}
