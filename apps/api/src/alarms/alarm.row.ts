import type { AlarmKind, AlarmState, Shelf, SuppressedBy, Tier } from '@stokehold/domain/alarm';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One alarm, from its raising until it is back to normal; then it stays as a record. */
@Entity('alarm')
export class AlarmRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') kind: AlarmKind;
  /** Null for the whole yard. */
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  /** For a limit of food: whose, and which. */
  @Column('uuid', { name: 'cook_id', nullable: true }) cookId: string | null;
  @Column('text', { name: 'limit_name', nullable: true }) limitName: string | null;
  @Column('uuid', { name: 'probe_id', nullable: true }) probeId: string | null;
  @Column('uuid', { name: 'device_id', nullable: true }) deviceId: string | null;
  @Column('text') state: AlarmState;
  /** When its condition began, the last time it did. */
  @Column('timestamptz', { name: 'raised_at' }) raisedAt: Date;
  @Column('timestamptz', { name: 'returned_at', nullable: true }) returnedAt: Date | null;
  @Column('timestamptz', { name: 'acknowledged_at', nullable: true }) acknowledgedAt: Date | null;
  @Column('uuid', { name: 'acknowledged_by', nullable: true }) acknowledgedBy: string | null;
  @Column('timestamptz', { name: 'shelved_until', nullable: true }) shelvedUntil: Date | null;
  @Column('uuid', { name: 'shelved_by', nullable: true }) shelvedBy: string | null;
  @Column('text', { name: 'shelf_way', nullable: true }) shelfWay: Shelf['way'] | null;
  @Column('text', { name: 'suppressed_by', nullable: true }) suppressedBy: SuppressedBy | null;
  /** The alarm that is its first cause. */
  @Column('uuid', { name: 'under_id', nullable: true }) underId: string | null;
  /** Since when it calls; null while it does not. */
  @Column('timestamptz', { name: 'called_at', nullable: true }) calledAt: Date | null;
  /** How far it called, and whom, the last time it did. */
  @Column('text', { name: 'told_tier', nullable: true }) toldTier: Tier | null;
  @Column('uuid', { array: true }) told: string[];
}
