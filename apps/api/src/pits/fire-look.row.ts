import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What was believed of a fire right after its last look, or after it was lit: a look that arrives late is taken in from here. */
@Entity('fire_look')
export class FireLookRow {
  @PrimaryColumn('uuid', { name: 'pit_id' }) pitId: string;
  /** Null for a fire that nobody has looked at since it was lit. */
  @Column('uuid', { name: 'check_id', nullable: true }) checkId: string | null;
  @Column('timestamptz', { name: 'looked_at' }) lookedAt: Date;
  @Column('bytea') belief: Buffer;
}
