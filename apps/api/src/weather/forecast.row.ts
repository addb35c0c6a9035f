import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { ForecastHour } from './forecast-forms.js';

/** The weather forecast of a yard: the place it was asked for, what was said last and when, and since when nothing could be had. */
@Entity('forecast')
export class ForecastRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @Column('double precision', { name: 'lat_deg' }) latDeg: number;
  @Column('double precision', { name: 'lon_deg' }) lonDeg: number;
  @Column('jsonb') hours: ForecastHour[];
  @Column('timestamptz', { name: 'fetched_at', nullable: true }) fetchedAt: Date | null;
  @Column('timestamptz', { name: 'failing_since', nullable: true }) failingSince: Date | null;
  @Column('text', { nullable: true }) trouble: string | null;
}
