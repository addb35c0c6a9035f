import type { Language, Role } from '@stokehold/domain/contract';
import { Column, Entity, PrimaryColumn } from 'typeorm';

/** The PIN of a person is in this table too, but belongs to those who let people in. */
@Entity('crew_member')
export class CrewMemberRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('text') name: string;
  @Column('text') role: Role;
  @Column('text') language: Language;
  @Column('integer', { name: 'rate_cents_per_hour' }) rateCentsPerHour: number;
  @Column({ type: 'text', name: 'pin_hash', nullable: true, insert: false, update: false }) pinHash: string | null;
  @Column('boolean', { name: 'has_left' }) hasLeft: boolean;
}
