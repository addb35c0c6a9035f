import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Where a yard's alarms and due checks are sent. */
@Entity('webhook')
export class WebhookRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') url: string;
  /** What the house signs with, shown once. */
  @Column('text') secret: string;
}

/** Something told to the outside: kept until it was taken, or a day is over. */
@Entity('link_message')
export class LinkMessageRow {
  @PrimaryColumn('uuid', { name: 'yard_id' }) yardId: string;
  /** The same thing is told once. */
  @PrimaryColumn('text') ref: string;
  @Column('text') kind: 'alarm' | 'due-check';
  @Column('timestamptz') at: Date;
  @Column('jsonb') body: object;
  @Column('timestamptz', { name: 'webhook_at', nullable: true }) webhookAt: Date | null;
  @Column('timestamptz', { name: 'broker_at', nullable: true }) brokerAt: Date | null;
}

/** The secret address under which a person's calendar is read, looked up by its hash. */
@Entity('calendar_address')
export class CalendarAddressRow {
  @PrimaryColumn('uuid', { name: 'crew_member_id' }) crewMemberId: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('bytea', { name: 'token_hash' }) tokenHash: Buffer;
}
