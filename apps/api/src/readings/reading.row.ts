import type { SampleReason } from '@stokehold/domain/reading';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What one probe showed: once per probe and time on the device's clock. The three times are never written over. */
@Entity('reading')
export class ReadingRow {
  @PrimaryColumn('uuid', { name: 'probe_id' }) probeId: string;
  @PrimaryColumn('timestamptz', { name: 'device_taken_at' }) deviceTakenAt: Date;
  @Column('timestamptz', { name: 'taken_at' }) takenAt: Date;
  @Column('timestamptz', { name: 'arrived_at' }) arrivedAt: Date;
  /** Corrected; null where the input gave a fault away. */
  @Column('double precision', { name: 'temp_c', nullable: true }) tempC: number | null;
  /** As the sensor had it, before the probe's correction. */
  @Column('real', { name: 'shown_c', nullable: true }) shownC: number | null;
  /** 0 good, 1 suspect, 2 bad. */
  @Column('smallint') quality: number;
  @Column('text', { nullable: true }) reason: SampleReason | null;
}
