import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('lot_reading')
export class LotReadingRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'lot_id' }) lotId: string;
  @Column('double precision', { name: 'moisture_frac' }) moistureFrac: number;
  @Column('timestamptz', { name: 'measured_at' }) measuredAt: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
}
