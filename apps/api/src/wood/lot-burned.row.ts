import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Splits of a lot that were burned on one day, UTC: the sum of its moves, written with each of them. */
@Entity('lot_burned')
export class LotBurnedRow {
  @PrimaryColumn('uuid', { name: 'lot_id' }) lotId: string;
  @PrimaryColumn('date') day: string;
  @Column('integer') pieces: number;
}
