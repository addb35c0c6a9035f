import type { SentReading } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

export type AsideBecause = 'probe-unknown' | 'time-impossible';

/** A reading of no probe that the yard knows, or of a time that cannot be: kept as it was sent, used for nothing. */
@Entity('reading_aside')
export class ReadingAsideRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @PrimaryColumn('text') source: string;
  @PrimaryColumn('timestamptz', { name: 'device_taken_at' }) deviceTakenAt: Date;
  @Column('text') why: AsideBecause;
  @Column('uuid', { name: 'device_id', nullable: true }) deviceId: string | null;
  @Column('timestamptz', { name: 'taken_at' }) takenAt: Date;
  @Column('timestamptz', { name: 'arrived_at' }) arrivedAt: Date;
  @Column('jsonb') body: SentReading;
}
