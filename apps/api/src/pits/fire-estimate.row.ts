import type { FirePage } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A reading that was kept and not used: at which end, why, and what it showed, °C. */
export interface UnusedReading extends Pick<FirePage['unused'][number], 'end' | 'why'> {
  readonly tempC: number | null;
}

/** How a pit stood at an instant: the past of its ribbon. */
@Entity('fire_estimate')
export class FireEstimateRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  @PrimaryColumn('timestamptz') at: Date;
  @Column('double precision', { name: 'temp_c' }) tempC: number;
  /** Both ends were read, by probes or by hand; else the temperature is the estimate's. */
  @Column('boolean') measured: boolean;
  @Column('double precision', { name: 'bed_kg' }) bedKg: number;
  /** By how much each zone was hotter than the chamber's mean, from the fire end; null in rows from before it was kept. */
  @Column('double precision', { name: 'zone_shift_k', array: true, nullable: true }) zoneShiftK: number[] | null;
  @Column('jsonb', { nullable: true }) unused: readonly UnusedReading[] | null;
}
