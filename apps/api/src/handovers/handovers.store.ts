import { Injectable } from '@nestjs/common';
import type { Handover } from '@stokehold/domain/contract';
import { epochS, fromIso, type PersonId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { HandoverRow } from './handover.row.js';

/** What the first handovers did not keep. */
const NOT_KEPT_ONCE = { openChecks: [], promised: [], alarms: [] };

@Injectable()
export class HandoversStore {
  async add(em: EntityManager, yardId: YardId, handover: Handover, people: { readonly by: PersonId | null; readonly to: PersonId | null }): Promise<void> {
    const { id, signedAt, note, ...summary } = handover;
    await em.insert(HandoverRow, { id, yardId, signedAt: new Date(toIso(fromIso(signedAt))), signedBy: people.by, toPerson: people.to, note, summary });
  }

  /** The newest first. */
  async last(em: EntityManager, yardId: YardId, most: number): Promise<Handover[]> {
    const rows = await em.find(HandoverRow, { where: { yardId }, order: { signedAt: 'desc', id: 'desc' }, take: most });
    return rows.map(({ id, signedAt, note, summary }) => ({ id, signedAt: toIso(epochS(signedAt.getTime() / 1000)), note, ...NOT_KEPT_ONCE, ...summary }));
  }
}
