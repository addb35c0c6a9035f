import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Somebody's decision about one piece of work of a shift: who does it, when it begins, or both. */
@Entity('pin')
export class PinRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'shift_id' }) shiftId: string;
  @Column('text') kind: 'check' | 'task' | 'break';
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('integer', { name: 'nth_check', nullable: true }) nthCheck: number | null;
  @Column('uuid', { name: 'task_id', nullable: true }) taskId: string | null;
  @Column('uuid', { name: 'break_id', nullable: true }) breakId: string | null;
  @Column('uuid', { array: true, nullable: true }) people: string[] | null;
  @Column('timestamptz', { name: 'starts_at', nullable: true }) startsAt: Date | null;
  @Column('timestamptz', { name: 'made_at' }) madeAt: Date;
  @Column('uuid', { name: 'made_by', nullable: true }) madeBy: string | null;
}
