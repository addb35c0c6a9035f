import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A pit that burns in a shift. */
@Entity('shift_pit')
export class ShiftPitRow {
  @PrimaryColumn('uuid', { name: 'shift_id' }) shiftId: string;
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @Column('double precision', { name: 'band_low_c' }) bandLowC: number;
  @Column('double precision', { name: 'band_high_c' }) bandHighC: number;
  @Column('timestamptz', { name: 'light_at' }) lightAt: Date;
}
