import type { RoundPit, RoundProblem } from './problem.js';

// The first looks of the night: what no plan can avoid there, because people stand where they stand.

export interface Opening {
  readonly unsafeS: number;
  readonly lateWeightedS: number;
}

interface FirstLook {
  readonly pit: RoundPit;
  readonly place: number;
  readonly keepUntil: number;
  /** A frozen first check says itself how late it is. */
  readonly frozenAt: number | undefined;
}

interface Hand {
  readonly skills: readonly string[];
  readonly ready: number;
  /** Where they are known to stand; undefined where facts still lie before them. */
  readonly place: number | undefined;
}

/** So many pits share the exact part of the bound: the ones that fall due first. */
const SHARED = 6;
/** Steps of the search over who looks first where; beyond it the simple bound stands. */
const STEPS = 20_000;

/**
 * Unavoidable lateness of the first looks: each by itself no sooner than the nearest able person can be there; and of the six
 * that fall due first together, the least weighted lateness of any way to share them out, everything else left aside.
 *
 *     alone:     sum of weight x max(0, ready + walk to the pit - due)
 *     together:  least over all orders of all people of sum of weight x max(0, start - due)
 *
 * Leaving work out never makes the rest later while no detour is shorter than the direct way, so the walks are taken as
 * shortest ways. Held to rounds/opening.test.ts.
 */
export function openingOf(problem: RoundProblem): Opening {
  const walkS = shortestWays(problem.walkS);
  const hands = handsOf(problem);
  const looks = looksOf(problem);
  const soonest = (look: FirstLook) => look.frozenAt ?? Math.max(look.pit.first.earliestAt, Math.min(look.keepUntil, ...ableFor(hands, look).map((hand) => hand.ready + wayS(walkS, hand, look))));
  const lateAt = ({ pit, keepUntil }: FirstLook, at: number) => pit.weight * Math.max(0, Math.min(at, keepUntil) - pit.first.dueAt);
  const unsafeS = looks.reduce((sum, look) => sum + Math.max(0, Math.min(soonest(look), look.keepUntil) - look.pit.first.latestSafeAt), 0);
  const alone = looks.map((look) => lateAt(look, soonest(look)));
  const shared = looks.map((look, i) => ({ look, i })).filter(({ look }) => look.frozenAt === undefined).sort((a, b) => a.look.pit.first.dueAt - b.look.pit.first.dueAt || a.i - b.i).slice(0, SHARED);
  const rest = alone.reduce((sum, late, i) => sum + (shared.some((one) => one.i === i) ? 0 : late), 0);
  const together = leastTogether({ walkS, hands, looks: shared.map(({ look }) => look), floors: shared.map(({ i }) => alone[i]!), lateAt });
  return { unsafeS, lateWeightedS: rest + together };
}

const ableFor = (hands: readonly Hand[], { pit }: FirstLook) => hands.filter(({ skills }) => pit.skill === undefined || skills.includes(pit.skill));
const wayS = (walkS: readonly (readonly number[])[], hand: Pick<Hand, 'place'>, look: FirstLook) => (hand.place === undefined ? 0 : walkS[hand.place]![look.place]!);

const handsOf = (problem: RoundProblem): readonly Hand[] =>
  problem.people.map((person) => ({
    skills: person.skills,
    ready: Math.max(problem.from, person.startsAt, person.freeFrom),
    place: problem.frozen.some((one) => one.personIds.includes(person.id)) ? undefined : problem.places.indexOf(person.atPlace),
  }));

/** The first check of each pit whose fire outlasts it. */
const looksOf = (problem: RoundProblem): readonly FirstLook[] =>
  problem.pits.flatMap((pit) => {
    const keepUntil = Math.min(pit.keepUntil ?? problem.until, problem.until);
    const frozen = problem.frozen.filter(({ work }) => work.kind === 'check' && work.pitId === pit.id).sort((a, b) => a.startsAt - b.startsAt)[0];
    return pit.first.dueAt >= keepUntil ? [] : [{ pit, place: problem.places.indexOf(pit.place), keepUntil, frozenAt: frozen?.startsAt }];
  });

/** Floyd and Warshall's shortest ways (from memory): a table in which no detour is shorter than the direct way. */
function shortestWays(walkS: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const ways = walkS.map((row) => [...row]);
  for (let via = 0; via < ways.length; via++) {
    for (const row of ways) for (let to = 0; to < row.length; to++) row[to] = Math.min(row[to]!, row[via]! + ways[via]![to]!);
  }
  return ways;
}

interface Together {
  readonly walkS: readonly (readonly number[])[];
  readonly hands: readonly Hand[];
  readonly looks: readonly FirstLook[];
  /** What each look costs at the least, by itself. */
  readonly floors: readonly number[];
  readonly lateAt: (look: FirstLook, at: number) => number;
}

/** Least weighted lateness of some first looks shared out among everybody, by depth-first search; the sum of their floors if it grows too long. */
function leastTogether({ walkS, hands, looks, floors, lateAt }: Together): number {
  const floorSum = floors.reduce((sum, floor) => sum + floor, 0);
  const crew: { readonly skills: readonly string[]; free: number; place: number | undefined }[] = hands.map(({ skills, place, ready }) => ({ skills, place, free: ready }));
  let best = looks.reduce((sum, look) => sum + lateAt(look, Infinity), 0);
  let steps = 0;
  // Looks are given out in the order in which they begin: every plan can be written down so.
  const extend = (left: readonly number[], from: number, cost: number, floorLeft: number) => {
    if (cost + floorLeft >= best || (steps += 1) > STEPS) return;
    if (left.length === 0) best = cost;
    for (const i of left) {
      const look = looks[i]!;
      for (const hand of crew) {
        if (look.pit.skill !== undefined && !hand.skills.includes(look.pit.skill)) continue;
        const { free, place } = hand;
        const at = Math.max(look.pit.first.earliestAt, free + wayS(walkS, hand, look));
        if (at < from) continue;
        hand.free = at + look.pit.checkS;
        hand.place = look.place;
        extend(left.filter((other) => other !== i), at, cost + lateAt(look, at), floorLeft - floors[i]!);
        hand.free = free;
        hand.place = place;
      }
    }
    // Nobody may look at all: then the fire is late until its end, as lateAt with no look reckons.
    if (left.length > 0) extend(left.slice(1), from, cost + lateAt(looks[left[0]!]!, Infinity), floorLeft - floors[left[0]!]!);
  };
  extend(looks.map((_, i) => i), 0, 0, floorSum);
  return steps > STEPS ? floorSum : best;
}
