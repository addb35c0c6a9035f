import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Pieces of a cook in a zone for a stretch of time; `until_at` is null for what lies there now. */
@Entity('placement')
export class PlacementRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'cook_id' }) cookId: string;
  @Column('uuid', { name: 'pit_id' }) pitId: string;
  @Column('integer', { name: 'zone_nth' }) zoneNth: number;
  @Column('integer') pieces: number;
  @Column('timestamptz', { name: 'from_at' }) fromAt: Date;
  @Column('timestamptz', { name: 'until_at', nullable: true }) untilAt: Date | null;
}
