import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What lies on a pit's cart of one lot: the sum of its moves, written with each of them. */
@Entity('cart_wood')
export class CartWoodRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @PrimaryColumn('uuid', { name: 'lot_id' }) lotId: string;
  @Column('integer') pieces: number;
  /** Of those: trimmed to lie across here. */
  @Column('integer', { default: 0 }) trimmed: number;
  /** When wood was pulled to it last: the lot pulled last lies on top. */
  @Column('timestamptz', { name: 'pulled_at', nullable: true }) pulledAt: Date | null;
}
