import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What the broker last said of a gateway: it is there, or its last will was told. */
@Entity('gateway_status')
export class GatewayStatusRow {
  @PrimaryColumn('uuid', { name: 'device_id' }) deviceId: string;
  /** Null while it is there. */
  @Column('timestamptz', { name: 'silent_since', nullable: true }) silentSince: Date | null;
}
