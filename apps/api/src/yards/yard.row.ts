import type { Language, Units } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('yard')
export class YardRow {
  @PrimaryColumn('uuid') id: string;
  @Column('text') name: string;
  @Column('text', { name: 'time_zone' }) timeZone: string;
  @Column('text') units: Units;
  @Column('text') language: Language;
  @Column('double precision', { name: 'plan_width_m' }) planWidthM: number;
  @Column('double precision', { name: 'plan_height_m' }) planHeightM: number;
  @Column('double precision', { name: 'plan_top_deg' }) planTopDeg: number;
  @Column('double precision', { name: 'wood_x_m' }) woodXM: number;
  @Column('double precision', { name: 'wood_y_m' }) woodYM: number;
  @Column('double precision', { name: 'walk_speed_m_per_s' }) walkSpeedMPerS: number;
  @Column('double precision', { name: 'screen_diagonal_m' }) screenDiagonalM: number;
  @Column('double precision', { name: 'view_distance_m' }) viewDistanceM: number;
  @Column('double precision', { name: 'latitude_deg', nullable: true }) latitudeDeg: number | null;
  @Column('double precision', { name: 'longitude_deg', nullable: true }) longitudeDeg: number | null;
  @Column('boolean') practice: boolean;
  /** The number of the last fact told in this yard; only the outbox counts it on. */
  @Column({ type: 'bigint', insert: false, update: false, default: 0 }) seq: string;
  /** How many entries the yard's record has, and its last link; only what keeps an entry moves them on. */
  @Column({ type: 'bigint', name: 'record_nth', insert: false, update: false, select: false, default: 0 }) recordNth: string;
  @Column({ type: 'bytea', name: 'record_link', insert: false, update: false, select: false }) recordLink: Buffer;
  @Column('timestamptz', { name: 'created_at' }) createdAt: Date;
}
