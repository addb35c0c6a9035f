import { Column, Entity, PrimaryColumn } from 'typeorm';

/** How a pit stood at an instant: the past of its ribbon. */
@Entity('fire_estimate')
export class FireEstimateRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @PrimaryColumn('timestamptz') at: Date;
  @Column('double precision', { name: 'temp_c' }) tempC: number;
  /** Both ends were read, by probes or by hand; else the temperature is the estimate's. */
  @Column('boolean') measured: boolean;
  @Column('double precision', { name: 'bed_kg' }) bedKg: number;
}
