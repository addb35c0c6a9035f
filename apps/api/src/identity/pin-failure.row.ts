import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Wrong PINs in a row of one person on one device. */
@Entity('pin_failure')
export class PinFailureRow {
  @PrimaryColumn('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @PrimaryColumn('uuid', { name: 'device_id' }) deviceId: string;
  @Column('integer', { name: 'in_a_row' }) inARow: number;
  @Column('timestamptz', { name: 'wait_until', nullable: true }) waitUntil: Date | null;
}
