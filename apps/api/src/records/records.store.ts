import { Injectable } from '@nestjs/common';
import type { CorrectRecord, Handover, RecordLog, RecordsView } from '@stokehold/domain/contract';
import { type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../platform/index.js';
import { type AskedLog, CORRECTIONS, HAS_LINE, LOGS, NIGHTS } from './logs.statements.js';
import { RecordCorrectionRow } from './record-correction.row.js';

export interface Stretch {
  readonly from: EpochS;
  readonly until: EpochS;
}
/** The lines of a log; of handovers with what was signed in one object. */
type Lines<L extends AskedLog> = RecordsView[L];

@Injectable()
export class RecordsStore {
  /** At most `most` lines of a log, the earliest first. */
  async lines<L extends Exclude<AskedLog, 'handovers'>>(em: EntityManager, yardId: YardId, log: L, { from, until }: Stretch, most: number): Promise<Lines<L>> {
    return (await em.query(LOGS[log], [yardId, toIso(from), toIso(until), most])) as Lines<L>;
  }

  async handovers(em: EntityManager, yardId: YardId, { from, until }: Stretch, most: number): Promise<Handover[]> {
    const rows = (await em.query(LOGS.handovers, [yardId, toIso(from), toIso(until), most])) as (Pick<Handover, 'id' | 'signedAt' | 'note'> & { summary: Omit<Handover, 'id' | 'signedAt' | 'note'> })[];
    return rows.map(({ summary, ...signed }) => ({ ...signed, ...{ openChecks: [], promised: [], alarms: [] }, ...summary }));
  }

  /** What was written in the stretch, and whenever it was about one of these lines. */
  async corrections(em: EntityManager, yardId: YardId, { from, until }: Stretch, lines: readonly string[], most: number): Promise<RecordsView['corrections']> {
    return (await em.query(CORRECTIONS, [yardId, toIso(from), toIso(until), most, [...lines]])) as RecordsView['corrections'];
  }

  async head(em: EntityManager, yardId: YardId): Promise<RecordsView['head']> {
    const [row] = (await em.query(`select record_nth::int as nth, encode(record_link, 'hex') as link from yard where id = $1`, [yardId])) as [RecordsView['head']];
    return row;
  }

  nights(em: EntityManager, yardId: YardId, { from, until }: Stretch): Promise<{ startsAt: string; endsAt: string }[]> {
    return em.query(NIGHTS, [yardId, toIso(from), toIso(until)]);
  }

  async hasLine(em: EntityManager, yardId: YardId, log: RecordLog, line: string): Promise<boolean> {
    return ((await em.query(HAS_LINE[log], [yardId, line])) as unknown[]).length > 0;
  }

  async correct(em: EntityManager, { id, actor, now, said }: { readonly id: string; readonly actor: Actor; readonly now: EpochS; readonly said: CorrectRecord }): Promise<void> {
    const { log, line, isRight, because } = said;
    await em.insert(RecordCorrectionRow, { id, yardId: actor.yardId, log, line, isRight, because, at: new Date(toIso(now)), crewMemberId: actor.person?.id ?? null, deviceId: actor.device.id });
  }
}
