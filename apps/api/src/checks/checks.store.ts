import { Injectable } from '@nestjs/common';
import type { CheckMark, CheckView } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, epochS, fromIso, type LotId, type PersonId, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import { type EntityManager, MoreThan } from 'typeorm';
import { Remembered } from '../platform/index.js';
import { FireCheckRow } from './fire-check.row.js';

/** A check with all its times and the device it was recorded on. */
export interface Check extends CheckView {
  readonly deviceId: DeviceId;
  readonly deviceSeenAt: EpochS;
  readonly arrivedAt: EpochS;
  readonly clockOffsetS: number;
}

const dateOf = (at: EpochS) => new Date(toIso(at));
const isoOf = (at: Date) => toIso(epochS(at.getTime() / 1000));

@Injectable()
export class ChecksStore {
  private readonly remembered = new Remembered<CheckView[]>(['check-recorded']);

  /** Holds other checks of this pit back until the transaction ends: which of two is the later one is then decided once. */
  async hold(em: EntityManager, pitId: PitId): Promise<void> {
    await em.query(`select pg_advisory_xact_lock(hashtextextended('check ' || $1, 0))`, [pitId]);
  }

  async lastSeenAt(em: EntityManager, pitId: PitId): Promise<EpochS | undefined> {
    const [last] = (await em.query('select extract(epoch from max(seen_at))::float8 as seen_s from fire_check where pit_id = $1', [pitId])) as { seen_s: number | null }[];
    return last?.seen_s == null ? undefined : epochS(last.seen_s);
  }

  async add(em: EntityManager, yardId: YardId, check: Check): Promise<void> {
    const { personId, seenAt, deviceSeenAt, arrivedAt, wasDueAt, air, ...rest } = check;
    this.remembered.forget(em);
    await em.insert(FireCheckRow, {
      ...rest, yardId, crewMemberId: personId, seenAt: dateOf(fromIso(seenAt)), deviceSeenAt: dateOf(deviceSeenAt), arrivedAt: dateOf(arrivedAt),
      wasDueAt: wasDueAt === null ? null : dateOf(fromIso(wasDueAt)), door: air?.door ?? null, damper: air?.damper ?? null, screen: air?.screen ?? null,
    });
  }

  /** From which lot the wood came, and what that makes of the check, is known once the wood was taken. */
  async setWood(em: EntityManager, id: string, wood: { readonly lotId: LotId | null; readonly marks: readonly CheckMark[] }): Promise<void> {
    this.remembered.forget(em);
    await em.update(FireCheckRow, { id }, { lotId: wood.lotId, marks: [...wood.marks] });
  }

  async one(em: EntityManager, yardId: YardId, id: string): Promise<CheckView | undefined> {
    const row = await em.findOneBy(FireCheckRow, { id, yardId });
    return row ? viewOf(row) : undefined;
  }

  /** Checks seen after `since`, of one pit or of all; in order of the time they were seen. */
  async since(em: EntityManager, yardId: YardId, since: EpochS, pitId?: PitId): Promise<CheckView[]> {
    return this.remembered.once(em, `${yardId} ${since} ${pitId}`, async () => {
      const rows = await em.find(FireCheckRow, {
        where: { yardId, seenAt: MoreThan(dateOf(since)), ...(pitId && { pitId }) },
        order: { seenAt: 'asc', arrivedAt: 'asc', id: 'asc' },
      });
      return rows.map(viewOf);
    });
  }
}

const viewOf = (row: FireCheckRow): CheckView => ({
  id: row.id,
  pitId: row.pitId as PitId,
  personId: row.crewMemberId as PersonId | null,
  seenAt: isoOf(row.seenAt),
  bed: row.bed,
  left: row.left,
  raked: row.raked,
  splits: row.splits,
  size: row.size,
  lotId: row.lotId as LotId | null,
  fireEndTempC: row.fireEndTempC,
  stackEndTempC: row.stackEndTempC,
  smoke: row.smoke,
  air: row.door !== null && row.damper !== null && row.screen !== null ? { door: row.door, damper: row.damper, screen: row.screen } : null,
  note: row.note,
  wasDueAt: row.wasDueAt && isoOf(row.wasDueAt),
  marks: row.marks,
});
