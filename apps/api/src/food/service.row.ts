import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('service')
export class ServiceRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') name: string;
  @Column('timestamptz', { name: 'ready_by' }) readyBy: Date;
  @Column('integer') portions: number;
}
