import type { DeviceKind } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('device')
export class DeviceRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') name: string;
  @Column('text') kind: DeviceKind;
  /** SHA-256 of the token; the token itself is with the device alone. */
  @Column('bytea', { name: 'token_hash' }) tokenHash: Buffer;
  @Column('timestamptz', { name: 'enrolled_at' }) enrolledAt: Date;
  @Column('timestamptz', { name: 'last_seen_at', nullable: true }) lastSeenAt: Date | null;
  @Column('timestamptz', { name: 'revoked_at', nullable: true }) revokedAt: Date | null;
}
