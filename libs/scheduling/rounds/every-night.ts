import type { RoundPit, RoundProblem } from './problem.js';

/** Seconds past latest safe, tasks without a place, seconds of tasks past latest, weighted seconds of checks late or early. */
export type FirstLevels = readonly [unsafeS: number, unplaced: number, pastLatestS: number, lateWeightedS: number];

interface Hand {
  readonly freeAt: number;
  readonly place: number;
}

const over = (value: number, limit: number) => Math.max(0, value - limit);
const plus = (one: FirstLevels, other: FirstLevels): FirstLevels => [one[0] + other[0], one[1] + other[1], one[2] + other[2], one[3] + other[3]];

function isLess(one: FirstLevels, other: FirstLevels): boolean {
  const at = one.findIndex((level, i) => level !== other[i]);
  return at >= 0 && one[at]! < other[at]!;
}

type Last = number | undefined;

/** When a fire wants its next look, after the last one or from the beginning. */
const windowAfter = ({ first, gap }: RoundPit, last: Last) =>
  last === undefined
    ? { earliest: first.earliestAt, due: first.dueAt, latest: first.latestSafeAt }
    : { earliest: last + gap.earliestS, due: last + gap.dueS, latest: last + gap.latestSafeS };

function looked(pit: RoundPit, last: Last, at: number): FirstLevels {
  const { earliest, due, latest } = windowAfter(pit, last);
  return [over(at, latest), 0, 0, pit.weight * (over(at, due) + over(earliest, at))];
}

/** What is left at the end: fires that fell due, and tasks that nobody did. */
const ending = ({ pits, until }: RoundProblem, lasts: readonly Last[], undone: number): FirstLevels =>
  pits.map((pit, p): FirstLevels => {
    const { due, latest } = windowAfter(pit, lasts[p]);
    return [over(until, latest), 0, 0, pit.weight * over(until, due)];
  }).reduce(plus, [0, undone, 0, 0]);

/**
 * The best first levels over every plan of a tiny night: at each step of a grid everybody free waits, or begins any check or task
 * they could have walked to. Where all times and lengths are whole steps no plan off the grid is better, for the costs are
 * piecewise linear in differences of starts, with whole steps at their corners. An oracle for tests, which shares nothing with the planner.
 *
 * @param problem  a few pits and tasks for one person, nobody with breaks, absences, facts or pins; every time a whole number of steps
 * @param stepS    the step of the grid, s
 */
export function everyNight(problem: RoundProblem, stepS: number): FirstLevels {
  const { from, until, people, pits, tasks } = problem;
  const known = new Map<string, FirstLevels>();
  const farthestS = Math.max(...problem.walkS.flat());
  const placeOf = (place: string) => problem.places.indexOf(place);

  const best = (at: number, turn: number, hands: readonly Hand[], lasts: readonly Last[], open: readonly number[]): FirstLevels => {
    if (at >= until) return ending(problem, lasts, open.length);
    if (turn === people.length) return best(at + stepS, 0, hands, lasts, open);
    // Whoever has been free for longer than the longest walk is as near to everything as one who is free since then.
    const key = [at, turn, ...hands.map(({ freeAt, place }) => (freeAt + farthestS <= at ? 'free' : `${freeAt - at} ${place}`)), '|', ...lasts, '|', ...open].join();
    const found = known.get(key);
    if (found) return found;
    let least = best(at, turn + 1, hands, lasts, open);
    const hand = hands[turn]!;
    const canBegin = (place: number, lengthS: number) => hand.freeAt + problem.walkS[hand.place]![place]! <= at && at + lengthS <= people[turn]!.endsAt;
    const busy = (place: number, lengthS: number) => hands.map((one, i) => (i === turn ? { freeAt: at + lengthS, place } : one));
    const offer = (levels: FirstLevels) => {
      if (isLess(levels, least)) least = levels;
    };
    for (const [p, pit] of pits.entries()) {
      const last = lasts[p];
      if (!canBegin(placeOf(pit.place), pit.checkS) || (last !== undefined && last + pit.checkS > at)) continue;
      offer(plus(looked(pit, last, at), best(at, turn + 1, busy(placeOf(pit.place), pit.checkS), lasts.map((one, i) => (i === p ? at : one)), open)));
    }
    for (const t of open) {
      const { place, lengthS, earliestAt, latestAt } = tasks[t]!;
      if (earliestAt > at || !canBegin(placeOf(place), lengthS)) continue;
      offer(plus([0, 0, over(at, latestAt), 0], best(at, turn + 1, busy(placeOf(place), lengthS), lasts, open.filter((one) => one !== t))));
    }
    known.set(key, least);
    return least;
  };
  return best(from, 0, people.map(({ freeFrom, atPlace }) => ({ freeAt: freeFrom, place: placeOf(atPlace) })), pits.map(() => undefined), tasks.map((_, t) => t));
}
