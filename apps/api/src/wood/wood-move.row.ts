import { Column, Entity, PrimaryColumn } from 'typeorm';

export type WoodMoveKind = 'bought' | 'pulled' | 'brought-back' | 'burned' | 'recounted' | 'trimmed';

/** One entry of the wood's ledger: what lies where is the sum of them, kept in `lot` and `cart_wood`. None is ever changed. */
@Entity('wood_move')
export class WoodMoveRow {
  @PrimaryColumn('uuid') id: string;
  @Column('uuid', { name: 'yard_id' }) yardId: string;
  @Column('uuid', { name: 'lot_id' }) lotId: string;
  /** The pit whose cart it concerns; null for the stack alone. */
  @Column('uuid', { name: 'pit_id', nullable: true }) pitId: string | null;
  @Column('text') kind: WoodMoveKind;
  @Column('integer', { name: 'stack_pieces' }) stackPieces: number;
  @Column('integer', { name: 'cart_pieces' }) cartPieces: number;
  /** Splits on the cart that are trimmed now and were not, negative the other way. */
  @Column('integer', { name: 'trimmed_pieces', default: 0 }) trimmedPieces: number;
  @Column('timestamptz', { name: 'moved_at' }) movedAt: Date;
  @Column('uuid', { name: 'crew_member_id', nullable: true }) crewMemberId: string | null;
  @Column('uuid', { name: 'device_id', nullable: true }) deviceId: string | null;
  /** When the house took it in; what a check burned was moved when the fire was seen. */
  @Column('timestamptz', { name: 'recorded_at', nullable: true }) recordedAt: Date | null;
  @Column('uuid', { name: 'check_id', nullable: true }) checkId: string | null;
  @Column('text', { nullable: true }) reason: string | null;
}
