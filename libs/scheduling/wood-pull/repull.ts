import type { LotId, PitId } from '@stokehold/domain/quantity';
import type { StopRule } from '../search/index.js';
import { planPull } from './plan-pull.js';
import type { CartLoad, PullChange, PullPlan } from './plan.js';
import { parameter, type PullPit, type PullProblem } from './problem.js';

/** What people were told before something happened. */
export interface PullBefore {
  /** Loads whose hours are not over, with the wood of them that is still to be hauled and the offcuts that are still to be taken along. */
  readonly toHaul: readonly CartLoad[];
  /** Heat that each pit was thought to want for the same hours. */
  readonly needJ: ReadonlyMap<PitId, number>;
  /** Heat of need and reserve that each pit was told it would miss, because the yard has no more. */
  readonly missingJ: ReadonlyMap<PitId, number>;
  /** The kitchen's wishes that each pit's wood was chosen for, of `wishesOf`. */
  readonly wishes: ReadonlyMap<PitId, readonly string[]>;
}
/** A plan made anew, and what people have to hear. */
export interface Repull {
  /** Of the pits that are planned anew. */
  readonly plan: PullPlan;
  /** The problem that the plan answers, with its promises: for the checker. */
  readonly problem: PullProblem;
  /** Loads of the other pits: they stay as they were told. */
  readonly kept: readonly CartLoad[];
  readonly changes: readonly PullChange[];
}

/** Why a pull is balanced again; `where` is the pit that runs short or whose food wants other wood, or the lot that is gone. */
export type RepullReason = { readonly because: 'runs-short' | 'mix-asked'; readonly where: PitId } | { readonly because: 'stock-gone'; readonly where: LotId };

/** A pit that wants this much more or less than thought burns otherwise; less is the spread of any night. Source: common practice, no source. */
const OTHERWISE_FRAC = 0.05;
const heatOn = (problem: PullProblem, pitId: PitId, lotId: LotId) => {
  const way = problem.ways.find((one) => one.pitId === pitId && one.lotId === lotId);
  return (way?.asIs ?? way?.trimmed)?.heatJ ?? 0;
};
const needOf = (problem: PullProblem, pitId: PitId) => problem.pits.find(({ id }) => id === pitId)?.hours.reduce((sum, { needJ }) => sum + needJ, 0) ?? 0;
const onCart = (problem: PullProblem, pitId: PitId) => problem.piles.filter(({ cartOf }) => cartOf === pitId);

/**
 * Why the pull is to be balanced again: a pit that would use up half of its reserve with what lies on its cart and what it was told
 * it gets, wood that was promised and is not there any more, or a wish of the kitchen that is new. A fire that burns a little more
 * changes nothing; nor does a lack that the pull has owned up to, as long as no other wood lies there that could mend it.
 *
 * @returns the weightiest reason first; none where the pull holds. Held to wood-pull.test.ts
 */
export function repullReasons(problem: PullProblem, before: PullBefore): readonly RepullReason[] {
  const short = problem.pits.find(({ id }) => {
    const lackJ = lackOf(problem, before, id);
    return lackJ > 0 && (lackJ > (before.missingJ.get(id) ?? 0) || liesToSpare(problem, before, id));
  });
  const told = splitsOf(before.toHaul);
  const gone = problem.lots.find(({ id }) => piecesOf(told, id) > inStack(problem, id));
  const asks = problem.pits.find(({ id }) => asksAnew(problem, before, id));
  return [
    ...(short ? [{ because: 'runs-short', where: short.id } as const] : []),
    ...(gone ? [{ because: 'stock-gone', where: gone.id } as const] : []),
    ...(asks ? [{ because: 'mix-asked', where: asks.id } as const] : []),
  ];
}

/** The kitchen's wishes for the hours of a pit that are left, each once: what a later pull is held to. */
export function wishesOf(pit: PullPit): readonly string[] {
  const wishes = pit.hours.flatMap(({ mix }) => mix.map(({ species, leastFrac, mostFrac }) => `${[...species].sort().join('+')} ${leastFrac.toFixed(3)} ${mostFrac.toFixed(3)}`));
  return [...new Set(wishes)].sort();
}
/** Whether the kitchen wishes for something that the wood of a pit was not chosen for; a wish that is over asks for nothing. */
function asksAnew(problem: PullProblem, { wishes }: PullBefore, pitId: PitId): boolean {
  const pit = problem.pits.find(({ id }) => id === pitId);
  return pit !== undefined && wishesOf(pit).some((wish) => !(wishes.get(pitId) ?? []).includes(wish));
}

const splitsOf = (loads: readonly CartLoad[]) => loads.flatMap(({ wood }) => wood.filter(({ isOffcut }) => !isOffcut));
const piecesOf = (wood: readonly { readonly lotId: LotId; readonly pieces: number }[], id: LotId) => wood.filter(({ lotId }) => lotId === id).reduce((sum, { pieces }) => sum + pieces, 0);
const inStack = (problem: PullProblem, id: LotId) => piecesOf(problem.piles.filter(({ cartOf }) => cartOf === undefined), id);

/** Heat that a pit lacks of its need and half of its reserve, J; negative where it has more. */
function lackOf(problem: PullProblem, { toHaul }: PullBefore, pitId: PitId): number {
  const told = toHaul.filter((load) => load.pitId === pitId);
  const hours = problem.pits.find(({ id }) => id === pitId)?.hours ?? [];
  const heatOfAll = (wood: readonly { readonly lotId: LotId; readonly pieces: number }[]) => wood.reduce((sum, { lotId, pieces }) => sum + pieces * heatOn(problem, pitId, lotId), 0);
  const offcuts = told.flatMap(({ wood }) => wood.filter(({ isOffcut }) => isOffcut)).map(({ lotId, pieces }) => ({ lotId, pieces: Math.min(pieces, inStack(problem, lotId)) }));
  const offcutsWantedJ = hours.filter((hour) => hour.offcuts).reduce((sum, { needJ }) => sum + needJ, 0);
  const haveJ = heatOfAll([...onCart(problem, pitId), ...splitsOf(told)]) + Math.min(heatOfAll(offcuts), offcutsWantedJ);
  const spreadJ = hours.reduce((sum, hour) => sum + hour.spreadJ, 0);
  return needOf(problem, pitId) + (parameter(problem, 'reserveDeviations') * spreadJ) / 2 - haveJ;
}

/** Whether the stack holds wood that may burn in this pit and that nobody was told of. */
function liesToSpare(problem: PullProblem, { toHaul }: PullBefore, pitId: PitId): boolean {
  const told = splitsOf(toHaul);
  return problem.lots.some(({ id, offcut }) => !offcut && heatOn(problem, pitId, id) > 0 && inStack(problem, id) > piecesOf(told, id));
}

/**
 * The pull of the rest of the night. First only for the pits that burn otherwise than thought or were promised wood that is gone: what
 * the others were told stays theirs. If a pit then still runs short, for all. What lies on the carts need not be hauled; lots that a pit
 * was not told of cost extra. So that few people have to hear of a change.
 *
 * @param problem  from now on; its promises are replaced by those of `before`
 * @param before   what is still to haul, and what was thought to be needed
 * @returns the plan, what is kept, and every changed number of splits with its cause. Held to wood-pull.test.ts
 */
export function repullWood(problem: PullProblem, before: PullBefore, options: { readonly seed: number; readonly stop: StopRule }): Repull {
  const touched = problem.pits.filter(({ id }) => isTouched(problem, before, id));
  const kept = before.toHaul.filter(({ pitId }) => !touched.some(({ id }) => id === pitId));
  const few = touched.length > 0 && touched.length < problem.pits.length ? repullFor({ ...problem, pits: touched, ...leftFor(problem, touched, kept) }, before, options) : undefined;
  if (few && few.plan.worth.shortJ === 0) return { ...few, kept };
  return { ...repullFor(problem, before, options), kept: [] };
}

function isTouched(problem: PullProblem, before: PullBefore, pitId: PitId): boolean {
  const own = splitsOf(before.toHaul.filter((load) => load.pitId === pitId));
  const cause = causeOf(problem, before, pitId, '' as LotId);
  return cause !== 'made-room' || own.some(({ lotId }) => causeOf(problem, before, pitId, lotId) === 'stock-changed');
}

/** Piles and ways as far as the pits that stay do not need them. */
function leftFor(problem: PullProblem, touched: PullProblem['pits'], kept: readonly CartLoad[]): Pick<PullProblem, 'piles' | 'ways'> {
  const isTouchedPit = (id: PitId) => touched.some((pit) => pit.id === id);
  const promised = new Map<string, number>();
  for (const { lotId, pieces } of kept.flatMap(({ wood }) => wood)) add(promised, lotId, pieces);
  const piles = problem.piles.filter(({ cartOf }) => cartOf === undefined || isTouchedPit(cartOf)).map((pile) => {
    if (pile.cartOf !== undefined) return pile;
    const taken = Math.min(pile.pieces, promised.get(pile.lotId) ?? 0);
    add(promised, pile.lotId, -taken);
    return { ...pile, pieces: pile.pieces - taken };
  });
  return { piles, ways: problem.ways.filter(({ pitId }) => isTouchedPit(pitId)) };
}

function repullFor(problem: PullProblem, before: PullBefore, options: { readonly seed: number; readonly stop: StopRule }): Omit<Repull, 'kept'> {
  const told = toldOf(problem, before);
  const promises = [...told].map(([key, pieces]) => ({ pitId: key.split(' ')[0] as PitId, lotId: key.split(' ')[1] as LotId, pieces }));
  const takenAlong = before.toHaul.flatMap(({ pitId, wood }) => wood.filter(({ isOffcut }) => isOffcut).map(({ lotId, pieces }) => ({ pitId, lotId, pieces })));
  const promised = { ...problem, promises: [...promises, ...takenAlong] };
  const plan = planPull(promised, options);
  const after = new Map<string, number>();
  for (const load of plan.loads) for (const { lotId, pieces } of splitsOf([load])) add(after, `${load.pitId} ${lotId}`, pieces);
  const changes = [...new Set([...told.keys(), ...after.keys()])].sort().flatMap((key): readonly PullChange[] => {
    const [piecesBefore, piecesAfter] = [told.get(key) ?? 0, after.get(key) ?? 0];
    const [pitId, lotId] = key.split(' ') as [PitId, LotId];
    const stays = piecesBefore > piecesAfter && onCart(problem, pitId).some((pile) => pile.lotId === lotId) && !before.toHaul.some((load) => load.pitId === pitId && load.wood.some((wood) => wood.lotId === lotId));
    if (piecesBefore === piecesAfter || stays) return [];
    return [{ pitId, lotId, piecesBefore, piecesAfter, because: causeOf(problem, before, pitId, lotId) }];
  });
  return { plan, problem: promised, changes };
}

const add = (counts: Map<string, number>, key: string, pieces: number) => counts.set(key, (counts.get(key) ?? 0) + pieces);

function toldOf(problem: PullProblem, before: PullBefore): ReadonlyMap<string, number> {
  const told = new Map<string, number>();
  for (const { cartOf, lotId, pieces } of problem.piles) if (cartOf !== undefined && pieces > 0) add(told, `${cartOf} ${lotId}`, pieces);
  for (const load of before.toHaul.filter(({ pitId }) => problem.pits.some(({ id }) => id === pitId))) for (const { lotId, pieces } of splitsOf([load])) add(told, `${load.pitId} ${lotId}`, pieces);
  return told;
}

function causeOf(problem: PullProblem, before: PullBefore, pitId: PitId, lotId: LotId): PullChange['because'] {
  const { toHaul, needJ } = before;
  const thought = needJ.get(pitId);
  const ratio = thought !== undefined && thought > 0 ? needOf(problem, pitId) / thought : 1;
  if (ratio > 1 + OTHERWISE_FRAC) return 'burns-more';
  if (ratio < 1 - OTHERWISE_FRAC) return 'burns-less';
  if (asksAnew(problem, before, pitId)) return 'mix-asked';
  return piecesOf(splitsOf(toHaul), lotId) > inStack(problem, lotId) ? 'stock-changed' : 'made-room';
}
