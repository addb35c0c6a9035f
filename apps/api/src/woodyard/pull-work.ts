import type { EpochS, LotId } from '@stokehold/domain/quantity';
import { trimWork, type WorkTimes } from '@stokehold/domain/wood';
import type { CartLoad, Haul, PullPlan, PullProblem } from '@stokehold/scheduling/wood-pull';
import type { PulledTask } from '../shifts/index.js';
import type { OnCart } from '../wood/index.js';

/** Splits of a load that a saw has to meet. */
export interface ToTrim {
  readonly lotId: LotId;
  readonly splits: number;
  readonly cuts: number;
}
/** What a load asks of people. */
export interface LoadWork {
  readonly load: number;
  readonly haul?: PulledTask;
  readonly trim?: PulledTask & { readonly wood: readonly ToTrim[] };
}
interface Known {
  readonly now: EpochS;
  readonly carts: readonly OnCart[];
  readonly names: ReadonlyMap<LotId, string>;
}

/** The hauls of a pull, and beside each load that has to be cut the work for those who may saw. */
export function workOf(plan: PullPlan, problem: PullProblem, known: Known): readonly LoadWork[] {
  return plan.loads.flatMap((load, nth): readonly LoadWork[] => {
    const haul = plan.hauls.find((one) => one.load === nth);
    const wood = toTrimOf(load, problem, known.carts);
    if (wood.length === 0) return haul ? [{ load: nth, haul: haulTask(haul, haul, load, problem, known) }] : [];
    const cuts = wood.reduce((sum, one) => sum + one.cuts, 0);
    const times = trimWork({ now: known.now, cuts, wantedAt: load.from, ...(haul && { haul }) });
    return [{
      load: nth, ...(haul && times.haul && { haul: haulTask(haul, times.haul, load, problem, known) }),
      trim: { kind: 'trim', pitId: load.pitId, ...times.trim, note: noteOf(wood.map(({ lotId, splits }) => ({ lotId, pieces: splits })), known), wood },
    }];
  });
}

const isOnOwnCart = (problem: PullProblem, load: CartLoad, pileId: string) => problem.piles.find(({ id }) => id === pileId)?.cartOf === load.pitId;

function haulTask(haul: Haul, { earliestAt, dueAt, latestAt, lengthS }: WorkTimes, load: CartLoad, problem: PullProblem, known: Known): PulledTask {
  return { kind: 'haul', pitId: haul.pitId, earliestAt, dueAt, latestAt, lengthS, note: noteOf(load.wood.filter(({ pileId, isOffcut }) => !isOffcut && !isOnOwnCart(problem, load, pileId)), known) };
}

/** Splits by the lots' own names, for the hand that does it. */
const noteOf = (wood: readonly { readonly lotId: LotId; readonly pieces: number }[], { names }: Known): string => wood.map(({ pieces, lotId }) => `${pieces} × ${names.get(lotId) ?? ''}`).join(', ').slice(0, 500);

/** Of what lies on the cart already, only what is not trimmed yet. */
function toTrimOf(load: CartLoad, problem: PullProblem, carts: readonly OnCart[]): readonly ToTrim[] {
  return load.wood.filter(({ way }) => way === 'trimmed').flatMap(({ pileId, lotId, pieces, cuts }) => {
    const trimmed = isOnOwnCart(problem, load, pileId) ? (carts.find((cart) => cart.pitId === load.pitId && cart.lotId === lotId)?.trimmed ?? 0) : 0;
    const splits = Math.max(0, pieces - trimmed);
    return splits > 0 ? [{ lotId, splits, cuts: (cuts / pieces) * splits }] : [];
  });
}
