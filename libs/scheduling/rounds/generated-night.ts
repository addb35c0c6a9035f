import { epochS, HOUR_S, later, MINUTE_S, randomStream, type EpochS, type PersonId, type PitId, type RandomStream, type TaskId } from '@stokehold/domain/quantity';
import type { RoundPerson, RoundPit, RoundProblem, RoundTask } from './problem.js';

export interface GeneratedNight {
  readonly pits: number;
  readonly people: number;
  readonly seed: number;
  /** Every gap times this; 1.25 is a quarter longer. Default 1. */
  readonly gapFactor?: number;
  readonly hours?: number;
  readonly from?: EpochS;
}

/**
 * A night drawn by a seed, for benchmarks and property tests: two rows of pits half a minute apart, due gaps of 26 to 34
 * minutes, checks of 3 to 6, per pit one load, three probes, a turn, a wrap and an unload (half of load and unload for two),
 * hauls from the stack each hour, one break of 30 and two of 10 minutes each, three quarters of the people able to do all.
 * Whole half minutes. The numbers are our own.
 */
export function generatedNight({ pits, people, seed, gapFactor = 1, hours = 12, from = epochS(1_800_000_000) }: GeneratedNight): RoundProblem {
  const random = randomStream(seed);
  const until = later(from, hours * HOUR_S);
  const places = ['stack', ...Array.from({ length: pits }, (_, i) => `place-${two(i)}`)];
  const spot = (place: number) => (place === 0 ? { row: 0, column: -2 } : { row: (place - 1) % 2, column: Math.floor((place - 1) / 2) });
  const walkS = places.map((_, a) => places.map((__, b) => (a === b ? 0 : 30 * (Math.abs(spot(a).row - spot(b).row) + Math.abs(spot(a).column - spot(b).column)))));
  const pitList = Array.from({ length: pits }, (_, i) => pitOf(i, { random, from, gapFactor }));
  const tasks = [
    ...pitList.flatMap((pit, i) => cookOf(pit, i, { random, from, spanS: until - from })),
    ...Array.from({ length: hours - 2 }, (_, h): RoundTask => window(`haul-${two(h)}`, 'haul', 'stack', { earliestAt: later(from, (h + 1) * HOUR_S), dueS: 30 * MINUTE_S, lengthS: 8 * MINUTE_S, people: 1 }, true)),
  ];
  const crew = Array.from({ length: people }, (_, i) => personOf(i, people, from, until));
  return { from, until, places, walkS, people: crew, pits: pitList, tasks, frozen: [], pins: [], promises: [] };
}

const two = (i: number) => String(i + 1).padStart(2, '0');
const halfMinutes = (random: RandomStream, min: number, max: number) => 30 * (min * 2 + random.below((max - min) * 2 + 1));
const toHalfMinutes = (seconds: number) => 30 * Math.round(seconds / 30);

function pitOf(i: number, { random, from, gapFactor }: { random: RandomStream; from: EpochS; gapFactor: number }): RoundPit {
  const dueS = toHalfMinutes(halfMinutes(random, 26, 34) * gapFactor);
  const gap = { earliestS: toHalfMinutes(0.6 * dueS), dueS, latestSafeS: toHalfMinutes(1.35 * dueS) };
  const firstS = Math.max(60, 30 * random.below(dueS / 30));
  const first = { earliestAt: later(from, Math.min(0, firstS - dueS + gap.earliestS)), dueAt: later(from, firstS), latestSafeAt: later(from, firstS + gap.latestSafeS - dueS) };
  return { id: `pit-${two(i)}` as PitId, place: `place-${two(i)}`, weight: 1 + random.below(3), first, gap, checkS: halfMinutes(random, 3, 6) };
}

interface Times {
  readonly earliestAt: EpochS;
  readonly dueS: number;
  readonly lengthS: number;
  readonly people: 1 | 2;
}

const window = (id: string, kind: string, place: string, { earliestAt, dueS, lengthS, people }: Times, unpleasant = false): RoundTask => ({
  id: id as TaskId, kind, place, lengthS, earliestAt, dueAt: later(earliestAt, dueS), latestAt: later(earliestAt, 2 * dueS), people, unpleasant,
});

function cookOf(pit: RoundPit, i: number, { random, from, spanS }: { random: RandomStream; from: EpochS; spanS: number }): readonly RoundTask[] {
  const people = i % 2 === 0 ? 2 : 1;
  const steps: readonly (readonly [string, number, number, 1 | 2, string?])[] = [
    ['load', 0.02, 8, people, 'cook'], ['probe', 0.3, 2, 1], ['turn', 0.4, 4, 1, 'cook'], ['probe', 0.5, 2, 1], ['wrap', 0.6, 6, 1, 'cook'], ['probe', 0.75, 2, 1], ['unload', 0.85, 8, people, 'cook'],
  ];
  return steps.map(([kind, at, minutes, needs, skill], n): RoundTask => {
    const earliestAt = later(from, toHalfMinutes(at * spanS) + halfMinutes(random, 0, 40));
    const task = window(`${kind}-${two(i)}-${n}`, kind, pit.place, { earliestAt, dueS: 30 * MINUTE_S, lengthS: minutes * MINUTE_S, people: needs });
    return skill === undefined ? task : { ...task, skill };
  });
}

function personOf(i: number, count: number, from: EpochS, until: EpochS): RoundPerson {
  const spanS = until - from;
  const rest = (n: number, frac: number, lengthS: number) => ({
    id: `break-${two(i)}-${n}`, lengthS, earliestAt: later(from, toHalfMinutes(frac * spanS)), latestAt: later(from, toHalfMinutes((frac + 0.17) * spanS)),
  });
  return {
    id: `person-${two(i)}` as PersonId, startsAt: from, endsAt: until, skills: i < Math.ceil(0.75 * count) ? ['cook'] : [], atPlace: 'stack', freeFrom: from,
    breaks: [rest(1, 0.17, 600), rest(2, 0.42, 1800), rest(3, 0.7, 600)],
  };
}
