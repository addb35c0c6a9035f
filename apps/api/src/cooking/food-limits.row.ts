import type { FoodLimits } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('food_limits')
export class FoodLimitsRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @Column('jsonb') limits: FoodLimits;
  @Column('timestamptz', { name: 'changed_at' }) changedAt: Date;
}
