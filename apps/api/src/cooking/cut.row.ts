import type { CutSettings } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A cut whose values this yard has changed or added; those it has not are the starting ones. */
@Entity('cut')
export class CutRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @PrimaryColumn('text') code: string;
  @Column('jsonb') settings: CutSettings;
  @Column('timestamptz', { name: 'changed_at' }) changedAt: Date;
}
