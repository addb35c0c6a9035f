import type { Species } from '@stokehold/domain/wood';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('lot')
export class LotRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') name: string;
  @Column('text') species: Species;
  @Column('double precision', { name: 'length_m' }) lengthM: number;
  @Column('double precision', { name: 'thickness_m' }) thicknessM: number;
  @Column('double precision', { name: 'moisture_frac' }) moistureFrac: number;
  @Column('timestamptz', { name: 'bought_at' }) boughtAt: Date;
  @Column('integer', { name: 'bought_pieces' }) boughtPieces: number;
  @Column('integer', { name: 'price_cents' }) priceCents: number;
  @Column('timestamptz', { name: 'cut_at', nullable: true }) cutAt: Date | null;
  @Column('timestamptz', { name: 'split_at', nullable: true }) splitAt: Date | null;
  @Column('double precision', { name: 'length_deviation_m', default: 0 }) lengthDeviationM: number;
  /** Sums of the lot's moves, written with each: in the stack, on carts, burned, and missing when counted (negative: found, or made by trimming). */
  @Column('integer', { name: 'in_stack', default: 0 }) inStack: number;
  @Column('integer', { name: 'on_carts', default: 0 }) onCarts: number;
  @Column('integer', { default: 0 }) burned: number;
  @Column('integer', { default: 0 }) lost: number;
  /** Sum of the moves of its offcuts. */
  @Column('integer', { default: 0 }) offcuts: number;
}
