import type { AdviceView, DueView, FireView } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What is believed of one fire now. */
@Entity('pit_fire')
export class PitFireRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('bytea') belief: Buffer;
  @Column('timestamptz', { name: 'believed_at' }) believedAt: Date;
  @Column('jsonb') estimate: FireView;
  @Column('jsonb', { nullable: true }) due: DueView | null;
  @Column('jsonb', { nullable: true }) advice: AdviceView | null;
}
