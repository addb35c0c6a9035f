import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What a probe showed in two minutes, of readings that are believed: what stays when the readings themselves are let go. */
@Entity('reading_thin')
export class ReadingThinRow {
  @PrimaryColumn('uuid', { name: 'probe_id' }) probeId: string;
  @PrimaryColumn('timestamptz', { name: 'until_at' }) untilAt: Date;
  @Column('real', { name: 'mean_c' }) meanC: number;
  @Column('real', { name: 'least_c' }) leastC: number;
  @Column('real', { name: 'most_c' }) mostC: number;
  @Column('smallint') samples: number;
}

/** Up to which arrival all readings are in the means. */
@Entity('thinned')
export class ThinnedRow {
  @PrimaryColumn('boolean', { name: 'only_row' }) onlyRow: boolean;
  @Column('timestamptz', { name: 'arrived_until' }) arrivedUntil: Date;
}
