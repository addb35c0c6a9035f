import { Injectable } from '@nestjs/common';
import type { AdviceAction, AirSetView, PitSettings, RecordCheck, TaskView } from '@stokehold/domain/contract';
import { pencilRule, type TruthSeen } from '@stokehold/domain/fire';
import { type CookId, type EpochS, fromIso, later, type LotId, MINUTE_S, type PitId, type RandomStream, type TaskId, toIso } from '@stokehold/domain/quantity';
import { liesAcross } from '@stokehold/domain/wood';
import { DataSource } from 'typeorm';
import { Alarms } from '../alarms/index.js';
import { Checks } from '../checks/index.js';
import { Food } from '../food/index.js';
import { Fires } from '../pits/index.js';
import { Ids } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { type Lot, Offcuts, Wood, WoodStore } from '../wood/index.js';
import { Pulls } from '../woodyard/index.js';
import type { Doings, Hand } from './hands.js';
import type { NightTruth } from './truth.js';

const CHECK_S = 3 * MINUTE_S;
const LAY_A_SPLIT_S = 45;
/** What somebody hauls who found a cart empty, while the pull says nothing. */
const HAUL_PIECES = 12;
/** Offcuts that a fire is lit with, if there are so many. */
const LIT_WITH = 6;
/** Advice older than this is not on the phone any more when the hand gets there. */
const ADVICE_HOLDS_S = 12 * MINUTE_S;
/** How often a tired eye grades a bed one step off. */
const MISGRADE_FRAC = 0.08;
/** What a gauge read by lamplight is off by, K. */
const READ_SD_K = 1.2;
const YIELD_FRAC = 0.58;

/** What each action of an advice puts on. */
const PUTS: Readonly<Record<AdviceAction, { readonly splits: number; readonly size: RecordCheck['size'] }>> = {
  rake: { splits: 0, size: 'standard' },
  one: { splits: 1, size: 'standard' },
  two: { splits: 2, size: 'standard' },
  'one-thin': { splits: 1, size: 'thin' },
  'one-thick': { splits: 1, size: 'thick' },
  'two-thin': { splits: 2, size: 'thin' },
  offcut: { splits: 1, size: 'offcut' },
  'two-offcuts': { splits: 2, size: 'offcut' },
};

/** What a load or an unload task is about: the cook, and where it is to lie. */
export interface Loading {
  readonly cookId: CookId;
  readonly lies: readonly { readonly pitId: PitId; readonly zone: number; readonly pieces: number }[];
}
/** What the hands need to know of the night beside what the house knows. */
export interface Scene {
  readonly truth: NightTruth;
  readonly pits: readonly PitSettings[];
  readonly random: RandomStream;
  /** Carries what a command told to all it causes, before the next hand moves. */
  readonly settle: () => Promise<void>;
  /** What a 'load' task of a pit puts there: the cook's placement, as the sample has it. */
  readonly loadings: ReadonlyMap<TaskId, Loading>;
}

/** What the practice crew does with its hands, each through the command that a phone would send. */
@Injectable()
export class PracticeDoings {
  constructor(
    private readonly database: DataSource,
    private readonly ids: Ids,
    private readonly alarms: Alarms,
    private readonly checks: Checks,
    private readonly fires: Fires,
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
    private readonly wood: Wood,
    private readonly offcuts: Offcuts,
    private readonly woodStore: WoodStore,
    private readonly pulls: Pulls,
    private readonly food: Food,
  ) {}

  on(night: Scene): Doings {
    return {
      check: (hand, pitId, now) => this.check(night, hand, pitId, now),
      task: (hand, task, now) => this.task(night, hand, task, now),
      break: async (hand, breakId, now) => {
        await this.shifts.reportBreak(hand.actor, { key: this.ids.next(), breakId, state: 'begun' });
        await night.settle();
        const running = await this.shifts.running(this.database.manager, hand.actor.yardId, now);
        const taken = running?.people.find(({ id }) => id === hand.id)?.breaks.find(({ id }) => id === breakId);
        return taken?.lengthS ?? 0;
      },
      takeNote: async (hand, alarmId) => {
        await this.alarms.acknowledge(hand.actor, { key: this.ids.next(), alarmId });
        await night.settle();
      },
    };
  }

  private async check(night: Scene, hand: Hand, pitId: PitId, now: EpochS): Promise<number> {
    const seen = night.truth.seen(pitId);
    const pit = night.pits.find(({ id }) => id === pitId);
    if (!seen || !pit) return 0;
    const graded = this.graded(seen, night.random);
    const { action, air } = await this.doingAt(hand, pit, graded, now);
    const put = PUTS[action];
    const { check } = await this.checks.record(hand.actor, {
      key: this.ids.next(),
      pitId,
      seenAt: toIso(now),
      bed: graded.bed,
      left: graded.left,
      raked: true,
      splits: put.splits,
      size: put.size,
      fireEndTempC: graded.fireEndTempC,
      stackEndTempC: graded.stackEndTempC,
      ...(air && { air }),
    });
    await night.settle();
    if (check.marks.includes('not-on-cart')) await this.askForHaul(night, hand, pitId, now);
    return CHECK_S + put.splits * LAY_A_SPLIT_S;
  }

  /** What the phone advises, the air with it; without fresh advice, the pencil rule. */
  private async doingAt(hand: Hand, pit: PitSettings, seen: TruthSeen, now: EpochS): Promise<{ readonly action: AdviceAction; readonly air?: AirSetView }> {
    const advice = await this.fires.advice(this.database.manager, hand.actor.yardId, { pitId: pit.id, now });
    if (advice && now - fromIso(advice.madeAt) <= ADVICE_HOLDS_S) return { action: advice.action, ...(advice.air && { air: advice.air.set }) };
    return { action: pencilRule({ splitLifeSum: seen.splitLifeSum, chamberTempC: seen.chamberTempC, band: pit.band }) };
  }

  private graded(seen: TruthSeen, random: RandomStream): TruthSeen {
    const grades = ['low', 'fair', 'full'] as const;
    const slip = random.next() < MISGRADE_FRAC ? (random.next() < 0.5 ? -1 : 1) : 0;
    const bed = grades[Math.min(2, Math.max(0, grades.indexOf(seen.bed) + slip))] ?? seen.bed;
    const read = (tempC: number) => Math.round((tempC + READ_SD_K * random.normal()) * 2) / 2;
    return { ...seen, bed, fireEndTempC: read(seen.fireEndTempC), stackEndTempC: read(seen.stackEndTempC) };
  }

  /** Somebody who found a cart empty asks for wood now, unless a haul is on its way; the plan gives it to whoever has time. */
  private async askForHaul(night: Scene, hand: Hand, pitId: PitId, now: EpochS): Promise<void> {
    const open = await this.tasks.open(this.database.manager, hand.actor.yardId, now);
    if (open.some((task) => task.kind === 'haul' && task.pitId === pitId && task.dueAt <= later(now, 20 * MINUTE_S))) return;
    await this.tasks.add(hand.actor, {
      key: this.ids.next(),
      id: this.ids.next(),
      kind: 'haul',
      pitId,
      earliestAt: toIso(now),
      dueAt: toIso(later(now, 20 * MINUTE_S)),
      latestAt: toIso(later(now, 60 * MINUTE_S)),
      lengthS: 6 * MINUTE_S,
      people: 1,
    });
    await night.settle();
  }

  private async task(night: Scene, hand: Hand, task: TaskView, now: EpochS): Promise<number> {
    const { pitId } = task;
    if (task.kind === 'light' && pitId && !night.truth.isLit(pitId)) await this.light(night, hand, pitId);
    if (task.kind === 'haul' && pitId) await this.haul(night, hand, task.id, pitId);
    if (task.kind === 'trim' && pitId) await this.trim(hand, task.id, pitId);
    const loading = night.loadings.get(task.id);
    if (task.kind === 'load' && loading) {
      await this.food.place(hand.actor, { key: this.ids.next(), cookId: loading.cookId, lies: [...loading.lies] });
    }
    if (task.kind === 'unload' && loading) await this.unload(hand, loading.cookId, now);
    await night.settle();
    await this.tasks.finish(hand.actor, { key: this.ids.next(), taskId: task.id, doneAt: toIso(now) });
    await night.settle();
    return task.lengthS;
  }

  /** A fire is lit, with the offcuts that lie there. */
  private async light(night: Scene, hand: Hand, pitId: PitId): Promise<void> {
    night.truth.light(pitId);
    const lie = await this.wood.offcutsBooked(this.database.manager, hand.actor.yardId);
    if (lie > 0) await this.offcuts.burnAtLighting(hand.actor, { key: this.ids.next(), pitId, pieces: Math.min(lie, LIT_WITH) });
  }

  private async unload(hand: Hand, cookId: CookId, now: EpochS): Promise<void> {
    const cooks = await this.food.cooks(this.database.manager, hand.actor.yardId, now);
    const cook = cooks.find(({ id }) => id === cookId);
    if (!cook || cook.offAt) return;
    await this.food.takeOff(hand.actor, { key: this.ids.next(), cookId: cook.id, offAt: toIso(now), yieldKg: Math.round(cook.weightKg * YIELD_FRAC * 10) / 10 });
  }

  /** What the pull says for this haul, as far as the stack still holds it. */
  private async haul(night: Scene, hand: Hand, taskId: TaskId, pitId: PitId): Promise<void> {
    const em = this.database.manager;
    const lots = await this.woodStore.lots(em, hand.actor.yardId);
    const told = (await this.pulls.woodOfTask(em, hand.actor.yardId, taskId)) ?? driestFor(night.pits.find(({ id }) => id === pitId), lots);
    for (const { lotId, pieces } of told) {
      const there = Math.min(pieces, lots.find(({ id }) => id === lotId)?.inStack ?? 0);
      if (there > 0) await this.wood.move(hand.actor, { key: this.ids.next(), lotId, pitId, pieces: there, way: 'pull' });
    }
  }

  /** What the pull wants cut, as far as the cart holds it. */
  private async trim(hand: Hand, taskId: TaskId, pitId: PitId): Promise<void> {
    const em = this.database.manager;
    const carts = await this.woodStore.carts(em, hand.actor.yardId);
    for (const { lotId, pieces } of (await this.pulls.woodOfTask(em, hand.actor.yardId, taskId)) ?? []) {
      const cart = carts.find((one) => one.pitId === pitId && one.lotId === lotId);
      const there = Math.min(pieces, (cart?.pieces ?? 0) - (cart?.trimmed ?? 0));
      if (there > 0) await this.offcuts.trim(hand.actor, { key: this.ids.next(), lotId, pitId, splits: there });
    }
  }
}

/** The driest lot that lies across this firebox and is not used up, as the records have it. */
function driestFor(pit: PitSettings | undefined, lots: readonly Lot[]): readonly { readonly lotId: LotId; readonly pieces: number }[] {
  const fit = lots.filter((lot) => lot.inStack > 0 && pit && liesAcross({ lengthM: lot.lengthM, ...pit }) === 'across');
  const best = fit.sort((a, b) => a.moisture - b.moisture || (a.name < b.name ? -1 : 1))[0];
  return best ? [{ lotId: best.id, pieces: HAUL_PIECES }] : [];
}
