import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A stretch of grate, counted from the fire end. */
@Entity('zone')
export class ZoneRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @PrimaryColumn('integer') nth: number;
  @Column('double precision', { name: 'length_m' }) lengthM: number;
}
