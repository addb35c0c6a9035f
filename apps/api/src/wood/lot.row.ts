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
}
