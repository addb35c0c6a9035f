import type { Effects } from '@stokehold/domain/food';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What finished cooks taught of a cut (`ref` its code) or of a pit (`ref` its id). */
@Entity('food_learned')
export class FoodLearnedRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @PrimaryColumn('text') kind: 'cut' | 'pit';
  @PrimaryColumn('text') ref: string;
  @Column('jsonb') effects: Effects;
}
