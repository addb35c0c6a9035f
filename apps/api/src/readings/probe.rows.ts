import type { Comparison, ProbeReason, Signal } from '@stokehold/domain/reading';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What is known of a probe's signal: enough to judge its next reading. */
@Entity('probe_signal')
export class ProbeSignalRow {
  @PrimaryColumn('uuid', { name: 'probe_id' }) probeId: string;
  @Column('jsonb') signal: Signal;
  @Column('timestamptz', { name: 'last_at' }) lastAt: Date;
  @Column('double precision', { name: 'temp_c', nullable: true }) tempC: number | null;
  @Column('smallint') quality: number;
  @Column('text', { nullable: true }) reason: ProbeReason | null;
  @Column('double precision', { name: 'pace_s' }) paceS: number;
}

/** What a probe showed beside the truth; it corrects the readings taken from then on. */
@Entity('probe_calibration')
export class ProbeCalibrationRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'probe_id' }) probeId: string;
  @Column('timestamptz', { name: 'from_at' }) fromAt: Date;
  @Column('jsonb') against: Comparison[];
  @Column('text', { nullable: true }) note: string | null;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
}

/** A gateway's own name for a probe. */
@Entity('probe_source')
export class ProbeSourceRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @PrimaryColumn('text') source: string;
  @Column('uuid', { name: 'probe_id' }) probeId: string;
}
