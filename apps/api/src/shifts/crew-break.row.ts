import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('crew_break')
export class CrewBreakRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'shift_id' }) shiftId: string;
  @Column('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @Column('integer', { name: 'length_s' }) lengthS: number;
  @Column('timestamptz', { name: 'earliest_at' }) earliestAt: Date;
  @Column('timestamptz', { name: 'latest_at' }) latestAt: Date;
  @Column('timestamptz', { name: 'began_at', nullable: true }) beganAt: Date | null;
  @Column('timestamptz', { name: 'ended_at', nullable: true }) endedAt: Date | null;
}
