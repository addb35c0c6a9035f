import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('weather')
export class WeatherRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('timestamptz', { name: 'seen_at' }) seenAt: Date;
  @Column('double precision', { name: 'wind_m_per_s' }) windMPerS: number;
  @Column('double precision', { name: 'gust_m_per_s' }) gustMPerS: number;
  @Column('double precision', { name: 'from_deg' }) fromDeg: number;
  @Column('double precision', { name: 'ambient_temp_c' }) ambientTempC: number;
  @Column('double precision', { name: 'rain_frac' }) rainFrac: number;
}
