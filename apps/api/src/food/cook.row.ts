import type { CookForecast, CookSettings, CutShape } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('cook')
export class CookRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'service_id', nullable: true }) serviceId: string | null;
  @Column('text') cut: string;
  @Column('text') shape: CutShape;
  @Column('integer') pieces: number;
  @Column('double precision', { name: 'weight_kg' }) weightKg: number;
  @Column('timestamptz', { name: 'comes_off_at', nullable: true }) comesOffAt: Date | null;
  @Column('timestamptz', { name: 'on_at', nullable: true }) onAt: Date | null;
  @Column('timestamptz', { name: 'off_at', nullable: true }) offAt: Date | null;
  @Column('double precision', { name: 'yield_kg', nullable: true }) yieldKg: number | null;
  /** The kitchen's wish of wood. */
  @Column('jsonb', { default: [] }) mix: CookSettings['mix'];
  /** When it will be done, as forecast last; written by cooking/ alone. */
  @Column('jsonb', { nullable: true }) forecast: CookForecast | null;
  /** What it taught was taken in. */
  @Column('boolean', { default: false }) taught: boolean;
}
