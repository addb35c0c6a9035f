import type { PlanView } from '@stokehold/domain/contract';
import type { SearchRecord } from '@stokehold/scheduling/night';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** How a plan was found, and whether it is the better one that was found after the first. */
export interface KeptSearch extends SearchRecord {
  readonly improved: boolean;
}

/** A checked plan; at most one of a yard is current. */
@Entity('plan')
export class PlanRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'shift_id' }) shiftId: string;
  @Column('timestamptz', { name: 'made_at' }) madeAt: Date;
  @Column('boolean', { name: 'is_current' }) isCurrent: boolean;
  @Column('jsonb') cause: PlanView['because'];
  @Column('jsonb') unplaced: PlanView['unplaced'];
  @Column('jsonb') load: PlanView['load'];
  @Column('jsonb') changes: PlanView['changes'];
  @Column('jsonb') decisions: PlanView['decisions'];
  @Column('integer', { name: 'late_weighted_s' }) lateWeightedS: number;
  @Column('integer', { name: 'bound_weighted_s' }) boundWeightedS: number;
  @Column('double precision', { name: 'evenness_frac', nullable: true }) evennessFrac: number | null;
  @Column('jsonb') search: KeptSearch;
}
