import type { AdviceView, FireView, LearnedView } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What was forecast right after a check, and what was learned of the pit by then: kept, so that it can be held against what came. */
@Entity('fire_told')
export class FireToldRow {
  @PrimaryColumn('uuid', { name: 'check_id' }) checkId: string;
  @Column('uuid', { name: 'pit_id' }) pitId: string;
  @Column('timestamptz', { name: 'looked_at' }) lookedAt: Date;
  @Column('text', { nullable: true }) advised: AdviceView['action'] | null;
  @Column('jsonb') fan: FireView['forecast'];
  @Column('jsonb') learned: LearnedView;
}
