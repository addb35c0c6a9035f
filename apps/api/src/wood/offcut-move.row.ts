import { Column, Entity, PrimaryColumn } from 'typeorm';

export type OffcutMoveKind = 'trimmed' | 'burned' | 'recounted';

/** One entry of the offcuts' ledger: how many lie there is the sum of them, kept in `lot`. None is ever changed. */
@Entity('offcut_move')
export class OffcutMoveRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  /** The lot that they were cut from. */
  @Column('uuid', { name: 'lot_id' }) lotId: string;
  /** The pit whose wood was trimmed, or on whose fire they went. */
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('text') kind: OffcutMoveKind;
  @Column('integer') pieces: number;
  @Column('timestamptz', { name: 'moved_at' }) movedAt: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('uuid', { name: 'check_id', nullable: true }) checkId: string | null;
  @Column('text', { nullable: true }) reason: string | null;
}
