import { HOUR_S, later, MINUTE_S, type EpochS, type ShiftId, type TaskId } from '@stokehold/domain/quantity';
import { loadOf, type LoadHour, type RoundProblem } from '../rounds/index.js';
import type { NightTask } from './facts.js';

/** How many people an hour of a night needs. */
export interface NeedHour {
  readonly fromAt: EpochS;
  readonly untilAt: EpochS;
  /** People with whom the hour goes well: the work fills four fifths of their time. */
  readonly needed: number;
  /** People without whom a fire would pass latest safe. */
  readonly fewest: number;
  /** People there, breaks spread over their windows. */
  readonly present: number;
  /** Of those needed, how many must have each skill. */
  readonly bySkill: readonly { readonly skill: string; readonly needed: number; readonly present: number }[];
  readonly loadFrac: number;
  readonly fails: boolean;
  readonly missingPeople: number;
  readonly mend: LoadHour['mend']['code'];
}

/** A load that still goes well. Source: common practice, no source; a load of 5/6 can always be kept ([KAWAMURA-2024]). */
const GOES_WELL_FRAC = 0.8;

/**
 * How many people a night needs at which hours, before anybody is planned for it:
 *
 *     needed = ceil( work of the hour / (0.8 x hour) ),   fewest = ceil( work without slack and walking / hour )
 *
 * for everybody and for each skill, beside those who are there.
 *
 * @param problem  the night as a problem, from its beginning
 * @returns one an hour. Held to libs/scheduling/night/roster-need.test.ts
 */
export function rosterNeed(problem: RoundProblem): readonly NeedHour[] {
  const hours = loadOf(problem);
  return hours.filter(({ skill }) => skill === undefined).map((hour) => {
    const skills = hours.filter(({ skill, fromAt }) => skill !== undefined && fromAt === hour.fromAt);
    const bySkill = skills.map((one) => ({ skill: one.skill ?? '', needed: goesWell(one), present: presentIn(one) }));
    const worst = [hour, ...skills].find(({ fails }) => fails) ?? hour;
    return {
      fromAt: hour.fromAt, untilAt: hour.untilAt, needed: goesWell(hour), fewest: Math.ceil(hour.neededForSafeS / lengthOf(hour)), present: presentIn(hour), bySkill,
      loadFrac: hour.loadFrac, fails: worst.fails, missingPeople: worst.missingPeople, mend: worst.mend.code,
    };
  });
}

const lengthOf = ({ fromAt, untilAt }: LoadHour) => untilAt - fromAt;
const goesWell = (hour: LoadHour) => Math.max(0, Math.ceil(hour.neededS / (GOES_WELL_FRAC * lengthOf(hour)) - 1e-9));
const presentIn = (hour: LoadHour) => Math.round((hour.presentS / lengthOf(hour)) * 10) / 10;

/** A cook of a service that is still to be made, as far as its handling goes. */
export interface CookToCome {
  readonly id: string;
  readonly pieces: number;
  /** When it lies on its pits; unknown where it does not yet. */
  readonly onAt: EpochS | null;
  readonly comesOffAt: EpochS | null;
  readonly readyBy: EpochS | null;
}

/** Loading and unloading: three minutes a piece, between ten minutes and half an hour, two people. Source: common practice, no source. */
const PIECE_S = 3 * MINUTE_S;
const HANDLING_S = { least: 10 * MINUTE_S, most: 30 * MINUTE_S };
/** Meat rests before it is served. Source: common practice, no source. */
const REST_S = 2 * HOUR_S;

/**
 * The usual work that a service's cooks bring to a night where nobody has planned it yet: loading once its fires are fit, and
 * unloading when it comes off or two hours before the meal.
 *
 * @param cooks    the cooks to come
 * @param night    the shift, when its food should go on, and the tasks that are planned already
 * @returns tasks that only stand for their work. Source: common practice, no source. Held to libs/scheduling/night/roster-need.test.ts
 */
export function usualTasks(cooks: readonly CookToCome[], night: { readonly shiftId: ShiftId; readonly from: EpochS; readonly until: EpochS; readonly foodOnAt: EpochS; readonly tasks: readonly NightTask[] }): readonly NightTask[] {
  const within = (at: EpochS | null): at is EpochS => at !== null && night.from <= at && at < night.until;
  const planned = (kind: NightTask['kind']) => night.tasks.some((task) => task.kind === kind);
  const task = (kind: 'load' | 'unload', { id, pieces }: CookToCome, at: EpochS): NightTask => ({
    id: `${kind}-${id}` as TaskId, shiftId: night.shiftId, kind, pitId: null, earliestAt: later(at, -HANDLING_S.most), dueAt: at, latestAt: later(at, HANDLING_S.most),
    lengthS: Math.min(HANDLING_S.most, Math.max(HANDLING_S.least, pieces * PIECE_S)), people: 2, doneAt: null, doneBy: null,
  });
  return cooks.flatMap((cook) => {
    const offAt = cook.comesOffAt ?? (cook.readyBy === null ? null : later(cook.readyBy, -REST_S));
    const serves = within(offAt) || (offAt !== null && offAt >= night.until && offAt < later(night.until, 12 * HOUR_S));
    return [
      ...(serves && cook.onAt === null && !planned('load') && within(night.foodOnAt) ? [task('load', cook, night.foodOnAt)] : []),
      ...(within(offAt) && !planned('unload') ? [task('unload', cook, offAt)] : []),
    ];
  });
}
