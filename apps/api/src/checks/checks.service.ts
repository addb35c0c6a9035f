import { Injectable } from '@nestjs/common';
import type { CheckMark, CheckRecorded, CheckView, RecordCheck, RouteInput, Routes } from '@stokehold/domain/contract';
import { type EpochS, fromIso, HOUR_S, later, MINUTE_S, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type DeviceTime, deviceTime, timeOfLook } from '@stokehold/domain/shift';
import { DataSource, type EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, Ids, refused } from '../platform/index.js';
import { Fires } from '../pits/index.js';
import { Shifts } from '../shifts/index.js';
import { Offcuts, Wood } from '../wood/index.js';
import { Yards } from '../yards/index.js';
import { type Check, ChecksStore } from './checks.store.js';

/** So long after a shift its fires may still be looked at. */
const AFTER_SHIFT_S = HOUR_S;

/** Fire checks: what was seen at a fire and what was done there. */
@Injectable()
export class Checks {
  constructor(
    private readonly commands: Commands,
    private readonly store: ChecksStore,
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly wood: Wood,
    private readonly offcuts: Offcuts,
    private readonly fires: Fires,
    private readonly ids: Ids,
    private readonly database: DataSource,
  ) {}

  /** Keeps a check; one that happened is refused only when it cannot have: what is odd about it becomes a mark. */
  record(actor: Actor, command: RecordCheck): Promise<CheckRecorded> {
    return this.commands.run(actor, 'record-check', command, async (deed) => {
      const time = timeTold(command, deed);
      const seenAt = await this.requirePossible(deed, command, time);
      await this.store.hold(deed.em, command.pitId);
      const last = await this.store.lastSeenAt(deed.em, command.pitId);
      const isSecond = last !== undefined && seenAt < last;
      const marks: CheckMark[] = [...(isSecond ? (['second-look'] as const) : []), ...(time.clockOff ? (['clock-off'] as const) : [])];
      const due = isSecond ? undefined : (await this.fires.dues(deed.em, deed.yardId)).find(({ pitId }) => pitId === command.pitId);
      const check = await this.kept(deed, {
        ...checkOf(command),
        id: this.ids.next(),
        personId: actor.person?.id ?? null,
        deviceId: actor.device.id,
        seenAt: toIso(seenAt),
        deviceSeenAt: fromIso(command.seenAt),
        arrivedAt: deed.now,
        clockOffsetS: time.clockOffsetS,
        wasDueAt: due ? toIso(due.dueAt) : null,
        marks,
      });
      deed.tell({ kind: 'check-recorded', pitId: command.pitId, checkId: check.id });
      return { check, clockOffsetS: time.clockOffsetS };
    });
  }

  /** The checks of one pit that were seen since a time. */
  async ofPit(actor: Actor, { pitId, since }: RouteInput<Routes['checks']>): Promise<CheckView[]> {
    const em = this.database.manager;
    await this.yards.pit(em, pitId, actor.yardId);
    return this.store.since(em, actor.yardId, fromIso(since), pitId);
  }

  one(em: EntityManager, yardId: YardId, checkId: string): Promise<CheckView | undefined> {
    return this.store.one(em, yardId, checkId);
  }

  /** The yard's checks that were seen since a time, in that order. */
  recent(em: EntityManager, yardId: YardId, since: EpochS): Promise<CheckView[]> {
    return this.store.since(em, yardId, since);
  }

  /** When the fire was looked at; refuses what cannot have been. */
  private async requirePossible(deed: Deed, command: RecordCheck, time: DeviceTime): Promise<EpochS> {
    const pit = await this.yards.pit(deed.em, command.pitId, deed.yardId);
    const seen = timeOfLook(time, deed.now);
    if (!seen.ok) return seen.refusal.code === 'check-too-old' ? tooOld() : inTheFuture(seen.refusal.byS);
    if (!(await this.burned(deed, pit.id, seen.value))) {
      refused('pit-not-burning', `${pit.name} does not burn in the shift of that time. Put it on the shift first, then send the check again.`, { pit: pit.name });
    }
    if (command.lotId) await this.wood.lot(deed, command.lotId);
    return seen.value;
  }

  /** Fires do not go out when a shift ends: a look soon after it still happened. */
  private async burned(deed: Deed, pitId: PitId, at: EpochS): Promise<boolean> {
    for (const time of [at, later(at, -AFTER_SHIFT_S)]) {
      const shift = await this.shifts.running(deed.em, deed.yardId, time);
      if (shift?.pits.some((pit) => pit.pitId === pitId)) return true;
    }
    return false;
  }

  /** The check with the wood it took from the cart. */
  private async kept(deed: Deed, told: Check): Promise<CheckView> {
    await this.store.add(deed.em, deed.yardId, { ...told, lotId: null });
    const { id: checkId, pitId, splits, size, personId, deviceId, lotId } = told;
    const put = { pitId, checkId, ...(lotId && { lotId }), at: fromIso(told.seenAt), by: personId, deviceId };
    // Offcuts that the book knows nothing of are no lack: few count them.
    const burned = size === 'offcut' ? { ...(await this.offcuts.burn(deed, { ...put, pieces: splits })), short: 0 } : await this.wood.burn(deed, { ...put, splits });
    const marks: CheckMark[] = burned.short > 0 ? [...told.marks, 'not-on-cart'] : told.marks;
    await this.store.setWood(deed.em, checkId, { lotId: burned.lotId, marks });
    const { deviceId: _device, deviceSeenAt: _deviceSeen, arrivedAt: _arrived, clockOffsetS: _offset, ...view } = told;
    return { ...view, lotId: burned.lotId, marks };
  }
}

const timeTold = ({ seenAt, sentAt }: RecordCheck, { now, aheadS }: Deed) =>
  deviceTime({ deviceAt: fromIso(seenAt), ...(sentAt !== undefined && { sentAt: fromIso(sentAt) }), arrivedAt: now, aheadS });

const tooOld = () => refused('check-too-old', 'This check is older than 72 hours and can no longer be taken in. Write it into the handover note.');
const inTheFuture = (byS: number) =>
  refused('check-in-the-future', `This check lies ${Math.ceil(byS / MINUTE_S)} minutes in the future. Set the clock of the device, then record it again.`, { aheadS: byS });

const checkOf = (told: RecordCheck) => ({
  pitId: told.pitId,
  bed: told.bed,
  left: told.left,
  raked: told.raked,
  splits: told.splits,
  size: told.size,
  lotId: told.lotId ?? null,
  fireEndTempC: told.fireEndTempC ?? null,
  stackEndTempC: told.stackEndTempC ?? null,
  smoke: told.smoke ?? null,
  air: told.air ?? null,
  note: told.note ?? null,
});
