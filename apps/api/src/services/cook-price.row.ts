import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('cook_price')
export class CookPriceRow {
  @PrimaryColumn('uuid', { name: 'cook_id' }) cookId: string;
  @Column('integer', { name: 'meat_cents' }) meatCents: number;
}
