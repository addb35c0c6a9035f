import type { AirSetView, CheckMark, RecordCheck } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One look at one fire. The device's time, the corrected one and the arrival are all kept, none is written over another. */
@Entity('fire_check')
export class FireCheckRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'pit_id' }) pitId: string;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('uuid', { name: 'device_id', nullable: true }) deviceId: string | null;
  @Column('timestamptz', { name: 'seen_at' }) seenAt: Date;
  @Column('timestamptz', { name: 'device_seen_at' }) deviceSeenAt: Date;
  @Column('timestamptz', { name: 'arrived_at' }) arrivedAt: Date;
  @Column('double precision', { name: 'clock_offset_s' }) clockOffsetS: number;
  @Column('text') bed: RecordCheck['bed'];
  @Column('text', { name: 'split_left' }) left: RecordCheck['left'];
  @Column('boolean') raked: boolean;
  @Column('integer') splits: number;
  @Column('text') size: RecordCheck['size'];
  @Column('uuid', { name: 'lot_id', nullable: true }) lotId: string | null;
  @Column('double precision', { name: 'fire_end_temp_c', nullable: true }) fireEndTempC: number | null;
  @Column('double precision', { name: 'stack_end_temp_c', nullable: true }) stackEndTempC: number | null;
  @Column('text', { nullable: true }) smoke: NonNullable<RecordCheck['smoke']> | null;
  /** How the air was left behind; all three null where nobody said so. */
  @Column('text', { nullable: true }) door: AirSetView['door'] | null;
  @Column('text', { nullable: true }) damper: AirSetView['damper'] | null;
  @Column('boolean', { nullable: true }) screen: boolean | null;
  @Column('text', { nullable: true }) note: string | null;
  @Column('timestamptz', { name: 'was_due_at', nullable: true }) wasDueAt: Date | null;
  @Column('text', { array: true }) marks: CheckMark[];
}
