import { Column, Entity, PrimaryColumn } from 'typeorm';

/** An alarm was called to people. */
@Entity('alarm_call')
export class AlarmCallRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'alarm_id' }) alarmId: string;
  @Column('timestamptz') at: Date;
  @Column('uuid', { array: true }) people: string[];
}
