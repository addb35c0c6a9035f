import type { AlarmKind, AlarmState } from '@stokehold/domain/shift';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One alarm, from its raising until it is back to normal; then it stays as a record. */
@Entity('alarm')
export class AlarmRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') kind: AlarmKind;
  /** Null for the whole yard. */
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('text') state: AlarmState;
  /** When its condition began, the last time it did. */
  @Column('timestamptz', { name: 'raised_at' }) raisedAt: Date;
  @Column('timestamptz', { name: 'returned_at', nullable: true }) returnedAt: Date | null;
  @Column('timestamptz', { name: 'acknowledged_at', nullable: true }) acknowledgedAt: Date | null;
  @Column('uuid', { name: 'acknowledged_by', nullable: true }) acknowledgedBy: string | null;
}
