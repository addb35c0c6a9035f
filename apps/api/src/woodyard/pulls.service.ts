import { Injectable } from '@nestjs/common';
import type { Done, MakePull, PullView, SaveClimate } from '@stokehold/domain/contract';
import { type EpochS, type LotId, MINUTE_S, type PitId, seedFrom, type ShiftId, type TaskId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type CartLoad, checkPull, type PullBefore, type PullProblem, type Repull, repullReasons, type RepullReason, validatePull, wishesOf } from '@stokehold/scheduling/wood-pull';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, Ids, log, refused, Workers } from '../platform/index.js';
import { type PulledTask, Tasks } from '../shifts/index.js';
import { NightWoods } from './night-wood.service.js';
import { boughtLotOf, type PullFacts, pullProblemOf } from './pull-facts.js';
import { workOf } from './pull-work.js';
import type { KeptLoad, WoodPullRow } from './wood-pull.row.js';
import { WoodyardStore } from './woodyard.store.js';

/** A pull is held against its fires no more often than this: wood runs short over hours. */
export const BALANCE_EVERY_S = 30 * MINUTE_S;

/** What is still told of the loads of a night: the wood of hauls that nobody has done yet, and offcuts. Loads whose hours are over and whose wood was hauled are past. */
function toldOf(loads: readonly KeptLoad[], now: EpochS, open: ReadonlySet<TaskId>): readonly CartLoad[] {
  const isOpen = ({ taskId }: KeptLoad) => taskId !== undefined && open.has(taskId);
  return loads.filter((load) => load.until > now || isOpen(load)).map((load) => ({ ...load, wood: load.wood.filter(({ pileId, isOffcut }) => isOffcut || (isOpen(load) && !load.onCart.includes(pileId))) }));
}
const wishesByPit = (problem: PullProblem) => Object.fromEntries(problem.pits.map((pit) => [pit.id, wishesOf(pit)]));
const needsOf = (problem: PullProblem) => Object.fromEntries(problem.pits.map(({ id, hours }) => [id, hours.reduce((sum, { needJ }) => sum + needJ, 0)]));

/** What the pits of a pull were thought to want from an instant on: its needs by the part of the hours that is left. */
export function needLeftJ(pull: Pick<WoodPullRow, 'loads' | 'needJ'>, now: EpochS): ReadonlyMap<PitId, number> {
  return new Map(Object.keys(pull.needJ).map((pitId) => {
    const own = pull.loads.filter((load) => load.pitId === pitId);
    return [pitId as PitId, own.reduce((sum, { needJ, from, until }) => sum + needJ * Math.min(1, Math.max(0, (until - Math.max(from, now)) / (until - from))), 0)];
  }));
}

/** Plans which wood goes to which pit, makes hauls of it, and balances it again in the night. */
@Injectable()
export class Pulls {
  constructor(
    private readonly commands: Commands,
    private readonly store: WoodyardStore,
    private readonly night: NightWoods,
    private readonly tasks: Tasks,
    private readonly workers: Workers,
    private readonly ids: Ids,
  ) {}

  saveClimate(actor: Actor, command: SaveClimate): Promise<Done> {
    return this.commands.run(actor, 'save-climate', command, async (deed) => {
      await this.store.saveClimate(deed.em, deed.yardId, command.months);
      deed.tell({ kind: 'yard-set-up' });
      return { done: true };
    });
  }

  make(actor: Actor, command: MakePull): Promise<PullView> {
    return this.commands.run(actor, 'make-pull', command, async (deed) => {
      const made = await this.pull(deed, 'asked');
      return made ?? refused('nothing-burns', 'No pit burns now or tonight. Plan a shift with its pits first; then the wood can be pulled.');
    });
  }

  /** Makes the pull again when a pit would run short or wood that was promised is gone. Does nothing where no pull was made. */
  async balance(deed: Deed): Promise<void> {
    const current = await this.store.currentPull(deed.em, deed.yardId);
    if (!current) return;
    const { facts, shift } = await this.night.gather(deed.em, deed.yardId, deed.now);
    if (!facts || shift?.id !== current.shiftId) return;
    const reason = reasonToBalance(facts, current, beforeOf(current, deed.now, await this.openHauls(deed.em, deed.yardId, deed.now)));
    if (reason) await this.pull(deed, reason.because);
  }

  /** What a task of the current pull is about: splits to bring to a cart, or to trim on it; undefined for one that the pull knows nothing of. */
  async woodOfTask(em: EntityManager, yardId: YardId, taskId: TaskId): Promise<readonly { readonly lotId: LotId; readonly pieces: number }[] | undefined> {
    const loads = (await this.store.currentPull(em, yardId))?.loads ?? [];
    const toCut = loads.find(({ trim }) => trim?.taskId === taskId)?.trim?.wood;
    if (toCut) return toCut.map(({ lotId, splits }) => ({ lotId, pieces: splits }));
    const load = loads.find((one) => one.taskId === taskId);
    return load?.wood.filter(({ pileId, isOffcut }) => !isOffcut && !load.onCart.includes(pileId));
  }

  /** Hauls that nobody has done yet. */
  async openHauls(em: EntityManager, yardId: YardId, now: EpochS): Promise<ReadonlySet<TaskId>> {
    return new Set((await this.tasks.open(em, yardId, now)).filter(({ kind, doneAt }) => kind === 'haul' && doneAt === null).map(({ id }) => id));
  }

  private async pull(deed: Deed, because: PullView['because']): Promise<PullView | undefined> {
    const { shift, facts } = await this.night.gather(deed.em, deed.yardId, deed.now);
    if (!shift || !facts) return undefined;
    const problem = pullProblemOf(facts);
    const valid = validatePull(problem);
    if (!valid.ok) throw new Error(`The wood of this night is no problem for the pull: ${valid.refusal.code} at ${valid.refusal.where}.`);
    const current = await this.store.currentPull(deed.em, deed.yardId);
    const before = current?.shiftId === shift.id ? current : undefined;
    const made = await this.workers.run('pullWood', {
      problem, seed: seedFrom('pull', deed.yardId), ...(before && { before: beforeOf(before, deed.now, await this.openHauls(deed.em, deed.yardId, deed.now)) }),
    });
    const faults = checkPull(made.problem, made.plan);
    if (faults.length > 0) {
      log.error({ yardId: deed.yardId, faults: faults.slice(0, 20) }, 'a wood pull failed its check and is not shown; the one before it stays');
      return before && viewOf(before);
    }
    const row = await this.keep(deed, { ...made, shiftId: shift.id, because, needJ: needsOf(problem), mix: wishesByPit(problem), facts, before });
    return viewOf(row);
  }

  private async keep(deed: Deed, made: Repull & Pick<WoodPullRow, 'because' | 'needJ' | 'mix'> & { readonly shiftId: ShiftId; readonly facts: PullFacts; readonly before: WoodPullRow | undefined }): Promise<WoodPullRow> {
    const { plan, kept, problem, before, facts } = made;
    const staying = (before?.loads ?? []).filter((load) => kept.some((one) => one.pitId === load.pitId && one.from === load.from));
    const work = workOf(plan, problem, { now: deed.now, carts: facts.carts, names: new Map(facts.lots.map(({ id, name }) => [id, name])) });
    const tasks = work.flatMap(({ haul, trim }) => [haul, trim]).filter((task) => task !== undefined);
    const { left, added } = await this.tasks.replacePulled(deed, made.shiftId, before?.taskIds ?? [], tasks, new Set(staying.map(({ pitId }) => pitId)));
    const idOf = (task: PulledTask | undefined) => (task ? added[tasks.indexOf(task)] : undefined);
    const own = plan.loads.map((load, nth): KeptLoad => {
      const { haul, trim } = work.find((one) => one.load === nth) ?? {};
      const [taskId, trimId] = [idOf(haul), idOf(trim)];
      return { ...keptLoad(problem, load), ...(taskId !== undefined && { taskId }), ...(trim && trimId !== undefined && { trim: { taskId: trimId, wood: trim.wood } }) };
    });
    const row: WoodPullRow = {
      id: this.ids.next(), yardId: deed.yardId, shiftId: made.shiftId, madeAt: new Date(toIso(deed.now)), isCurrent: true, because: made.because,
      loads: [...own, ...staying].sort((a, b) => (a.pitId === b.pitId ? a.from - b.from : a.pitId < b.pitId ? -1 : 1)), needJ: made.needJ, mix: made.mix, worth: plan.worth, gapFrac: plan.gapFrac,
      changes: [...made.changes], taskIds: [...left, ...added],
    };
    await this.store.replacePull(deed.em, row);
    return row;
  }
}

function keptLoad(problem: PullProblem, load: CartLoad): KeptLoad {
  const hours = problem.pits.find(({ id }) => id === load.pitId)!.hours.filter(({ from, until }) => load.from <= from && until <= load.until);
  const onCart = problem.piles.filter(({ cartOf }) => cartOf === load.pitId).map(({ id }) => id);
  return { ...load, needJ: hours.reduce((sum, { needJ }) => sum + needJ, 0), onCart: load.wood.map(({ pileId }) => pileId).filter((id) => onCart.includes(id)) };
}

export function beforeOf(pull: WoodPullRow, now: EpochS, open: ReadonlySet<TaskId>): PullBefore {
  const last = pull.loads.filter(({ pitId, from }) => !pull.loads.some((load) => load.pitId === pitId && load.from > from));
  return { toHaul: toldOf(pull.loads, now, open), needJ: needLeftJ(pull, now), missingJ: new Map(last.map(({ pitId, shortJ, reserveShortJ }) => [pitId, shortJ + reserveShortJ])), wishes: new Map(Object.entries(pull.mix) as [PitId, readonly string[]][]) };
}

/** Why the house balances a pull again; a fire that has just been given its wood shows first how it burns. */
export function reasonToBalance(facts: PullFacts, { madeAt }: Pick<WoodPullRow, 'madeAt'>, before: PullBefore): RepullReason | undefined {
  const isFresh = facts.now - madeAt.getTime() / 1000 < BALANCE_EVERY_S;
  return repullReasons(pullProblemOf(facts), before).find(({ because }) => because !== 'runs-short' || !isFresh);
}

export const viewOf = ({ madeAt, because, loads, worth, gapFrac, changes }: WoodPullRow): PullView => ({
  madeAt: toIso(Math.floor(madeAt.getTime() / 1000) as EpochS), because, gapFrac, changes: [...changes],
  loads: loads.map(({ pitId, from, until, needJ, heatJ, shortJ, reserveShortJ, mixOffJ, wood, onCart }) => ({
    pitId, from: toIso(from), until: toIso(until), needJ, heatJ, shortJ, reserveShortJ, mixOffJ,
    wood: wood.map(({ pileId, lotId, isOffcut, pieces, way, cuts, offcuts }) => ({ lotId: boughtLotOf(lotId), isOffcut, pieces, isOnCart: onCart.includes(pileId), isTrimmed: way === 'trimmed', cuts, offcuts })),
  })),
  worstWetFrac: worth.worstWetPoints / 1000, woodCents: worth.woodMills / 10,
});
