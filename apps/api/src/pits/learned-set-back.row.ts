import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Somebody let go of what was learned of a pit, and why. */
@Entity('learned_set_back')
export class LearnedSetBackRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'pit_id' }) pitId: string;
  @Column('timestamptz') at: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('text') reason: string;
}
