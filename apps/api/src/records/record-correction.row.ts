import type { RecordLog } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What is right about a line of the record that was written wrongly; the line itself is never changed. */
@Entity('record_correction')
export class RecordCorrectionRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') log: RecordLog;
  @Column('text') line: string;
  @Column('text', { name: 'is_right' }) isRight: string;
  @Column('text') because: string;
  @Column('timestamptz') at: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('uuid', { name: 'device_id' }) deviceId: string;
}
