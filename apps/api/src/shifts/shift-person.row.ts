import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Somebody's hours on a shift, and what was reported of them last. */
@Entity('shift_person')
export class ShiftPersonRow {
  @PrimaryColumn('uuid', { name: 'shift_id' }) shiftId: string;
  @PrimaryColumn('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @Column('timestamptz', { name: 'starts_at' }) startsAt: Date;
  @Column('timestamptz', { name: 'ends_at' }) endsAt: Date;
  @Column('text') presence: 'here' | 'late' | 'away';
  @Column('timestamptz', { name: 'presence_from', nullable: true }) presenceFrom: Date | null;
  @Column('timestamptz', { name: 'presence_until', nullable: true }) presenceUntil: Date | null;
}
