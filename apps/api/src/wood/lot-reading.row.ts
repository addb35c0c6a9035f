import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('lot_reading')
export class LotReadingRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'lot_id' }) lotId: string;
  @Column('double precision', { name: 'moisture_frac' }) moistureFrac: number;
  @Column('timestamptz', { name: 'measured_at' }) measuredAt: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('double precision', { name: 'shown_percent', nullable: true }) shownPercent: number | null;
  @Column('text', { nullable: true }) basis: 'dry' | 'wet' | null;
  @Column('double precision', { name: 'wood_temp_c', nullable: true }) woodTempC: number | null;
  /** One standard deviation. */
  @Column('double precision', { name: 'deviation_frac', default: 0.02 }) deviationFrac: number;
  /** Over fibre saturation: the meter only says that it is wet. */
  @Column('boolean', { name: 'at_least', default: false }) atLeast: boolean;
}
