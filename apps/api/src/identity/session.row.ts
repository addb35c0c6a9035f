import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Somebody signed in on a device. */
@Entity('session')
export class SessionRow {
  @PrimaryColumn('bytea', { name: 'token_hash' }) tokenHash: Buffer;
  @Column('uuid', { name: 'device_id' }) deviceId: string;
  @Column('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @Column('timestamptz', { name: 'began_at' }) beganAt: Date;
  @Column('timestamptz', { name: 'last_used_at' }) lastUsedAt: Date;
  @Column('timestamptz', { name: 'ended_at', nullable: true }) endedAt: Date | null;
}
