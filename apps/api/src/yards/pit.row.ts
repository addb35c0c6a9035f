import type { PitSettings } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('pit')
export class PitRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') name: string;
  @Column('double precision', { name: 'x_m' }) xM: number;
  @Column('double precision', { name: 'y_m' }) yM: number;
  @Column('text', { name: 'fire_end' }) fireEnd: PitSettings['fireEnd'];
  @Column('double precision', { name: 'fire_end_heading_deg' }) fireEndHeadingDeg: number;
  @Column('double precision', { name: 'chamber_length_m' }) chamberLengthM: number;
  @Column('double precision', { name: 'chamber_diameter_m' }) chamberDiameterM: number;
  @Column('double precision', { name: 'firebox_length_m' }) fireboxLengthM: number;
  @Column('double precision', { name: 'firebox_diameter_m' }) fireboxDiameterM: number;
  @Column('double precision', { name: 'steel_thickness_m' }) steelThicknessM: number;
  @Column('double precision', { name: 'stack_height_m' }) stackHeightM: number;
  @Column('double precision', { name: 'stack_diameter_m' }) stackDiameterM: number;
  @Column('double precision', { name: 'band_low_c' }) bandLowC: number;
  @Column('double precision', { name: 'band_high_c' }) bandHighC: number;
  @Column('boolean') retired: boolean;
}
