import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What one probe showed: once per probe and time on the device's clock. The three times are never written over. */
@Entity('reading')
export class ReadingRow {
  @PrimaryColumn('uuid', { name: 'probe_id' }) probeId: string;
  @PrimaryColumn('timestamptz', { name: 'device_taken_at' }) deviceTakenAt: Date;
  @Column('timestamptz', { name: 'taken_at' }) takenAt: Date;
  @Column('double precision', { name: 'temp_c' }) tempC: number;
  @Column('timestamptz', { name: 'arrived_at' }) arrivedAt: Date;
}
