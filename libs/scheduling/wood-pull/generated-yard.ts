import { epochS, type LotId, type PitId, type RandomStream, randomStream } from '@stokehold/domain/quantity';
import type { PullHour, PullProblem, PullWay } from './problem.js';

/** What to draw: a yard of invented pits and lots for tests and benches. */
export interface GeneratedYard {
  readonly pits: number;
  readonly lots: number;
  readonly seed: number;
  readonly hours?: number;
  /** Stock over need: 1 is just enough. Default 2. */
  readonly plenty?: number;
  /** Part of the lots that are wetter than good wood. Default 0.3. */
  readonly wetFrac?: number;
  /** Offcuts of every third lot, used in the first hour and in the last third of the night. Default false. */
  readonly offcuts?: boolean;
}

const SPECIES = ['oak', 'hickory', 'pecan', 'apple'];

/** A night drawn from a seed: needs about one split of 31 MJ per 45 min and pit, lots of differing size, price, place and dryness. */
export function generatedYard(yard: GeneratedYard): PullProblem {
  const problem = splitsOfYard(yard);
  return yard.offcuts ? withOffcuts(problem, randomStream(yard.seed + 7919)) : problem;
}

function splitsOfYard({ pits, lots, seed, hours = 12, plenty = 2, wetFrac = 0.3 }: GeneratedYard): PullProblem {
  const random = randomStream(seed);
  const from = epochS(1_800_000_000);
  const between = (low: number, high: number) => Math.round(low + (high - low) * random.next());
  const pitIds = Array.from({ length: pits }, (_, i) => `pit-${i}` as PitId);
  const lotIds = Array.from({ length: lots }, (_, i) => `lot-${i}` as LotId);
  const spots = Array.from({ length: pits + 3 }, () => [between(0, 60), between(0, 40)] as const);
  const places = [...pitIds, 'stack-0', 'stack-1', 'stack-2'];
  const walkS = spots.map(([x, y]) => spots.map(([u, v]) => Math.round(Math.hypot(x - u, y - v) / 1.2)));
  const heat = lotIds.map(() => between(20e6, 42e6));
  const total = pits * hours * 41.3e6;
  const stockPieces = Math.max(1, Math.ceil((plenty * total) / 31e6 / lots));
  const ways = pitIds.flatMap((pitId) => lotIds.flatMap((lotId, l): PullWay[] => {
    const draw = random.next();
    if (draw < 0.08) return [];
    if (draw < 0.2) return [{ pitId, lotId, trimmed: { heatJ: Math.round(heat[l]! * 0.8), trimMills: 120, cuts: 1, offcuts: 1 } }];
    const lies = draw < 0.35 ? 'lengthwise' as const : 'across' as const;
    return [{ pitId, lotId, asIs: { heatJ: heat[l]!, lies }, ...(lies === 'lengthwise' && { trimmed: { heatJ: Math.round(heat[l]! * 0.7), trimMills: 120, cuts: 1, offcuts: 1 } }) }];
  }));
  return {
    from, places, walkS, ways, promises: [],
    lots: lotIds.map((id, l) => ({
      id, species: SPECIES[random.below(SPECIES.length)]!, pieceKg: heat[l]! / 15.5e6, priceMills: Math.round((heat[l]! / 31e6) * between(900, 2200)),
      wetPoints: random.next() < wetFrac ? between(10, 80) : 0, laterMills: l,
    })),
    piles: lotIds.map((lotId, l) => ({ id: `pile-${l}`, lotId, place: `stack-${random.below(3)}`, pieces: between(stockPieces * 0.5, stockPieces * 1.5) })),
    pits: pitIds.map((id) => {
      const across = random.next() < 0.6;
      const mix = random.next() < 0.4 ? [{ species: [SPECIES[random.below(SPECIES.length)]!], leastFrac: 0.5, mostFrac: 1 }] : [];
      const size = 0.8 + 0.4 * random.next();
      return {
        id, place: id, cartKg: 45,
        hours: Array.from({ length: hours }, (_, h): PullHour => {
          const needJ = Math.round(size * 41.3e6 * (0.85 + 0.3 * random.next()));
          return { from: epochS(from + h * 3600), until: epochS(from + (h + 1) * 3600), needJ, spreadJ: Math.round(needJ * 0.15), across: across && h < hours / 2, offcuts: false, mix };
        }),
      };
    }),
  };
}

/** Two fifths of a split each, dry or wet as their lot is, free: the lot's splits bear its price. */
function withOffcuts(problem: PullProblem, random: RandomStream): PullProblem {
  const from = problem.lots.filter((_, l) => l % 3 === 0);
  const offcutOf = (id: LotId) => `${id}-offcuts` as LotId;
  const hours = problem.pits[0]!.hours.length;
  return {
    ...problem,
    lots: [...problem.lots, ...from.map((lot) => ({ ...lot, id: offcutOf(lot.id), pieceKg: 0.4 * lot.pieceKg, priceMills: 0, laterMills: 0, offcut: true }))],
    piles: [...problem.piles, ...from.map(({ id }) => ({ id: `offcuts-${id}`, lotId: offcutOf(id), place: 'stack-0', pieces: 10 + random.below(30) }))],
    ways: [...problem.ways, ...problem.pits.flatMap((pit) => from.map(({ id, pieceKg }) => ({ pitId: pit.id, lotId: offcutOf(id), asIs: { heatJ: Math.round(0.4 * pieceKg * 15.5e6), lies: 'across' as const } })))],
    pits: problem.pits.map((pit) => ({ ...pit, hours: pit.hours.map((hour, h) => ({ ...hour, offcuts: h === 0 || h >= (2 * hours) / 3 })) })),
  };
}
