import type { TaskKind } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('task')
export class TaskRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'shift_id', nullable: true }) shiftId: string | null;
  @Column('text') kind: TaskKind;
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('timestamptz', { name: 'earliest_at' }) earliestAt: Date;
  @Column('timestamptz', { name: 'due_at' }) dueAt: Date;
  @Column('timestamptz', { name: 'latest_at' }) latestAt: Date;
  @Column('integer', { name: 'length_s' }) lengthS: number;
  @Column('integer') people: 1 | 2;
  @Column('text', { nullable: true }) note: string | null;
  @Column('timestamptz', { name: 'done_at', nullable: true }) doneAt: Date | null;
  @Column('uuid', { name: 'done_by', nullable: true }) doneBy: string | null;
}
