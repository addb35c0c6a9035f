import type { DeviceKind } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

@Entity('device_code')
export class DeviceCodeRow {
  /** The code, hashed with the key outside the database. */
  @PrimaryColumn('bytea', { name: 'code_hash' }) codeHash: Buffer;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') kind: DeviceKind;
  @Column('timestamptz', { name: 'expires_at' }) expiresAt: Date;
  @Column('timestamptz', { name: 'used_at', nullable: true }) usedAt: Date | null;
}
