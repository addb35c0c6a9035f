import { Injectable } from '@nestjs/common';
import type { Device, DeviceKind } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, epochS, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { DeviceCodeRow } from './device-code.row.js';
import { DeviceRow } from './device.row.js';

const iso = (date: Date | null) => date && toIso(epochS(date.getTime() / 1000));
const viewOf = (row: DeviceRow): Device => ({
  id: row.id as DeviceId,
  name: row.name,
  kind: row.kind,
  enrolledAt: toIso(epochS(row.enrolledAt.getTime() / 1000)),
  lastSeenAt: iso(row.lastSeenAt),
  revokedAt: iso(row.revokedAt),
});

/** Enrolled devices and the codes that enrol them. */
@Injectable()
export class DeviceStore {
  /** The last enrolled first. */
  async list(em: EntityManager, yardId: YardId): Promise<Device[]> {
    return (await em.find(DeviceRow, { where: { yardId }, order: { enrolledAt: 'DESC', id: 'ASC' } })).map(viewOf);
  }

  async add(em: EntityManager, device: { id: DeviceId; yardId: YardId; name: string; kind: DeviceKind; tokenHash: Buffer; now: EpochS }): Promise<void> {
    const { now, ...row } = device;
    await em.insert(DeviceRow, { ...row, enrolledAt: new Date(now * 1000), lastSeenAt: null, revokedAt: null });
  }

  /** False when the yard has no such device. One that was revoked before stays revoked from then. */
  async revoke(em: EntityManager, yardId: YardId, id: DeviceId, now: EpochS): Promise<boolean> {
    const device = await em.findOneBy(DeviceRow, { id, yardId });
    if (!device) return false;
    if (!device.revokedAt) await em.update(DeviceRow, { id }, { revokedAt: new Date(now * 1000) });
    return true;
  }

  async addCode(em: EntityManager, code: { codeHash: Buffer; yardId: YardId; kind: DeviceKind; expiresAt: EpochS }): Promise<void> {
    await em.insert(DeviceCodeRow, { ...code, expiresAt: new Date(code.expiresAt * 1000), usedAt: null });
  }

  /** Uses the code up; undefined when it does not exist, was used, or is too old. Of two at once, one gets it. */
  async takeCode(em: EntityManager, codeHash: Buffer, now: EpochS): Promise<{ yardId: YardId; kind: DeviceKind } | undefined> {
    const [[row]] = (await em.query(
      'update device_code set used_at = $2 where code_hash = $1 and used_at is null and expires_at > $2 returning yard_id as "yardId", kind',
      [codeHash, toIso(now)],
    )) as [{ yardId: YardId; kind: DeviceKind }[]];
    return row;
  }
}
