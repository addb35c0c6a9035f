import type { Handover } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What was signed, word for word: names are kept as they were that night. */
export type Signed = Omit<Handover, 'id' | 'signedAt' | 'note'>;

@Entity('handover')
export class HandoverRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('timestamptz', { name: 'signed_at' }) signedAt: Date;
  @Column('uuid', { name: 'signed_by', nullable: true }) signedBy: string | null;
  @Column('uuid', { name: 'to_person', nullable: true }) toPerson: string | null;
  @Column('text') note: string;
  @Column('jsonb') summary: Signed;
}
