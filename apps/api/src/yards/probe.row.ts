import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('probe')
export class ProbeRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'pit_id' }) pitId: string;
  @Column('text') name: string;
  @Column('integer', { name: 'zone_nth' }) zoneNth: number;
  /** A probe taken away keeps its readings. */
  @Column('boolean') removed: boolean;
}
