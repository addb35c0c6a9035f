import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Who does what when in a plan; in order of start. */
@Entity('assignment')
export class AssignmentRow {
  @PrimaryColumn('uuid', { name: 'plan_id' }) planId: string;
  @PrimaryColumn('integer') nth: number;
  @Column('text') kind: 'check' | 'task' | 'break';
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('integer', { name: 'nth_check', nullable: true }) nthCheck: number | null;
  @Column('uuid', { name: 'task_id', nullable: true }) taskId: string | null;
  @Column('uuid', { name: 'break_id', nullable: true }) breakId: string | null;
  @Column('uuid', { array: true }) people: string[];
  @Column('timestamptz', { name: 'starts_at' }) startsAt: Date;
  @Column('timestamptz', { name: 'ends_at' }) endsAt: Date;
  @Column('integer', { name: 'late_s' }) lateS: number;
  @Column('integer', { name: 'past_latest_s' }) pastLatestS: number;
  @Column('timestamptz', { name: 'due_at', nullable: true }) dueAt: Date | null;
  @Column('integer', { name: 'early_s' }) earlyS: number;
  @Column('boolean') pinned: boolean;
}
