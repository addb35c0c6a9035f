import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('yard_climate')
export class YardClimateRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  /** 1 is January. */
  @PrimaryColumn('integer') month: number;
  @Column('double precision', { name: 'temp_c' }) tempC: number;
  @Column('double precision', { name: 'humidity_frac' }) humidityFrac: number;
}
