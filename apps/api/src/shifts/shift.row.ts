import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('shift')
export class ShiftRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('timestamptz', { name: 'starts_at' }) startsAt: Date;
  @Column('timestamptz', { name: 'ends_at' }) endsAt: Date;
}
