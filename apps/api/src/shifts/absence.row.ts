import { Column, Entity, PrimaryColumn } from 'typeorm';

/** An absence that is over. */
@Entity('absence')
export class AbsenceRow {
  @PrimaryColumn('uuid', { name: 'shift_id' }) shiftId: string;
  @PrimaryColumn('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @PrimaryColumn('timestamptz', { name: 'from_at' }) fromAt: Date;
  @Column('timestamptz', { name: 'until_at' }) untilAt: Date;
}
