import { Injectable } from '@nestjs/common';
import type { EndTemps } from '@stokehold/domain/chamber';
import type { EventOf } from '@stokehold/domain/contract';
import { type AirSet, type BedGrade, firePositionOf, type Look, type PitLearned, setBackLearned, type SplitLeft, UnreadableBeliefError } from '@stokehold/domain/fire';
import { type EpochS, later, type LotId, MINUTE_S, type PitId } from '@stokehold/domain/quantity';
import { liesAcross, type Piece, pieceOfSize, type PieceSize, USUAL_SPLIT } from '@stokehold/domain/wood';
import type { Deed } from '../platform/index.js';
import { Tasks } from '../shifts/index.js';
import { Wood } from '../wood/index.js';
import { burnsNow, type Errand, errandOf, keptOfThisFire } from './errand.js';
import { type Cause, FireKeeper } from './keeper.js';
import { type KeptFire, PitsStore } from './pits.store.js';
import { ToldStore } from './told.store.js';
import { isCarryMinute } from './stale.js';
import { type PitTonight, Tonight } from './tonight.js';

/** A fire check as the estimate takes it in. */
export interface CheckSeen extends EndTemps {
  readonly checkId: string;
  readonly pitId: PitId;
  readonly seenAt: EpochS;
  readonly bed: BedGrade;
  readonly left: SplitLeft;
  readonly raked: boolean;
  readonly splits: number;
  readonly size: PieceSize;
  readonly lotId: LotId | null;
  /** How the air was left behind; absent where nobody said so. */
  readonly air?: AirSet;
}

/** A look this much older than what is believed is taken in as if it were made now; an older one from the last look on. */
const NEAR_ENOUGH_S = 2 * MINUTE_S;

/** What facts cause in what we believe of the fires. */
@Injectable()
export class PitsReactions {
  constructor(
    private readonly tonight: Tonight,
    private readonly store: PitsStore,
    private readonly keeper: FireKeeper,
    private readonly wood: Wood,
    private readonly tasks: Tasks,
    private readonly told: ToldStore,
  ) {}

  /** On even minutes every burning fire is carried to now. */
  async onMinute(_: EventOf<'minute-passed'>, deed: Deed): Promise<void> {
    if (!isCarryMinute(deed.now)) return;
    const { errands, resting } = await this.night(deed);
    await this.store.rest(deed.em, resting);
    await this.carry(deed, errands, 'minute');
  }

  /** A pit that is newly burning gets its fire; the others their new band. */
  async onShiftPlanned(_: EventOf<'shift-planned'>, deed: Deed): Promise<void> {
    const { errands, resting } = await this.night(deed);
    await this.store.rest(deed.em, resting);
    await this.carry(deed, errands.map((errand) => ({ ...errand, anew: true })), 'shift');
  }

  /** A fire that was just lit begins when its task was done, unless somebody has looked at it since. */
  async onTaskFinished({ taskId }: EventOf<'task-finished'>, deed: Deed): Promise<void> {
    const task = await this.tasks.one(deed.em, deed.yardId, taskId);
    if (task?.kind !== 'light' || !task.pitId || !task.doneAt) return;
    const pit = (await this.tonight.pits(deed.em, deed.yardId, deed.now)).find(({ id }) => id === task.pitId);
    const last = await this.store.lastLook(deed.em, task.pitId);
    if (!pit || (last?.checkId && last.lookedAt >= task.doneAt)) return;
    const begin = { at: task.doneAt, state: 'cold' } as const;
    await this.carry(deed, [{ pit, kept: undefined, begin, lastLookAt: begin.at, anew: true }], 'task');
  }

  /** A check corrects what is believed at the time it was made, lays its wood on, and is carried to now. */
  async onCheck(check: CheckSeen, deed: Deed): Promise<void> {
    const { em, yardId, now } = deed;
    const [pits, [before], lastLook] = await Promise.all([
      this.tonight.pits(em, yardId, now), this.store.fires(em, yardId, check.pitId), this.store.lastLook(em, check.pitId),
    ]);
    const pit = pits.find(({ id }) => id === check.pitId);
    if (!pit) return;
    const kept = keptOfThisFire(pit, before);
    const last = kept && lastLook;
    if (last && (last.checkId === check.checkId || last.lookedAt > check.seenAt)) return;
    const look = await this.lookOf(check, pit, deed);
    await this.carry(deed, [{ pit, kept, begin: beginOfLook(kept, last, check), look, lastLookAt: check.seenAt, anew: true }], 'check');
  }

  /** What was learned is let go: in the fire that burns, and in what a late look would start from. The next night finds the mark. */
  async onLearnedSetBack({ pitId }: EventOf<'learned-set-back'>, deed: Deed): Promise<void> {
    const pit = (await this.tonight.pits(deed.em, deed.yardId, deed.now)).find(({ id }) => id === pitId);
    const [before] = await this.store.fires(deed.em, deed.yardId, pitId);
    const mine = pit && keptOfThisFire(pit, before);
    if (!pit || !mine || !burnsNow(pit, mine, deed.now)) return;
    const kept = { ...mine, belief: forgotten(mine.belief) };
    const last = await this.store.lastLook(deed.em, pitId);
    if (last) await this.store.keepLooks(deed.em, [{ ...last, belief: forgotten(last.belief) }]);
    const begin = { at: kept.believedAt, belief: kept.belief };
    await this.carry(deed, [{ pit, kept, begin, lastLookAt: last?.lookedAt ?? kept.believedAt, anew: true }], 'pit');
  }

  /** A fire that is kindled begins with what earlier nights taught of its pit. */
  private async carry(deed: Deed, errands: readonly Errand[], because: Cause): Promise<void> {
    const kindled = errands.filter(({ begin }) => 'state' in begin);
    const taught = kindled.length > 0 ? await this.told.learnedForTonight(deed.em, kindled.map(({ pit }) => pit.id), deed.now) : new Map<PitId, PitLearned>();
    const withLearned = errands.map((errand): Errand => {
      const learned = taught.get(errand.pit.id);
      return learned && 'state' in errand.begin ? { ...errand, begin: { ...errand.begin, learned } } : errand;
    });
    await this.keeper.carry(deed, withLearned, because);
  }

  private async night(deed: Deed): Promise<{ readonly errands: Errand[]; readonly resting: PitId[] }> {
    const { em, yardId, now } = deed;
    const [pits, fires] = await Promise.all([this.tonight.pits(em, yardId, now), this.store.fires(em, yardId)]);
    const keptOf = ({ id }: PitTonight) => fires.find(({ pitId }) => pitId === id);
    const burning = pits.filter((pit) => burnsNow(pit, keptOf(pit), deed.now));
    return {
      errands: burning.map((pit) => errandOf(pit, keptOf(pit), keptOf(pit)?.lookedAt, deed.now)),
      resting: fires.filter(({ pitId, due, advice }) => (due ?? advice) && !burning.some(({ id }) => id === pitId)).map(({ pitId }) => pitId),
    };
  }

  private async lookOf(check: CheckSeen, pit: PitTonight, deed: Deed): Promise<Look & { readonly checkId: string }> {
    const standard: Piece = check.lotId ? await this.wood.lot(deed, check.lotId) : USUAL_SPLIT;
    const piece = pieceOfSize(standard, check.size);
    const { fireEndTempC, stackEndTempC } = check;
    return {
      checkId: check.checkId,
      at: check.seenAt,
      bed: check.bed,
      left: check.left,
      ...(fireEndTempC !== undefined && { fireEndTempC }),
      ...(stackEndTempC !== undefined && { stackEndTempC }),
      on: { pieces: Array.from({ length: check.splits }, () => piece), raked: check.raked },
      ...(check.air && { air: check.air }),
      position: firePositionOf(liesAcross({ lengthM: piece.lengthM, ...pit.shape })),
    };
  }
}

/** Bytes of an older version are forgotten anyway: the next carry kindles the fire from its last look. */
function forgotten(belief: Uint8Array): Uint8Array {
  try {
    return setBackLearned(belief);
  } catch (error) {
    if (error instanceof UnreadableBeliefError) return belief;
    throw error;
  }
}

/** Where a look is taken in: at what is believed now when that is near enough, else from the last look on; a fire nobody knew of begins as it was seen. */
function beginOfLook(kept: KeptFire | undefined, last: { readonly lookedAt: EpochS; readonly belief: Uint8Array } | undefined, check: CheckSeen): Errand['begin'] {
  if (kept && kept.believedAt <= later(check.seenAt, NEAR_ENOUGH_S)) return { at: kept.believedAt, belief: kept.belief };
  if (last) return { at: last.lookedAt, belief: last.belief };
  const temps = [check.fireEndTempC, check.stackEndTempC].filter((tempC) => tempC !== undefined);
  const chamberTempC = temps.reduce((sum, tempC) => sum + tempC, 0) / temps.length;
  return { at: check.seenAt, state: check.bed, ...(temps.length > 0 && { chamberTempC }) };
}
