import { Injectable } from '@nestjs/common';
import { type EpochS, type LotId, type PersonId, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Ids } from '../platform/index.js';
import type { OffcutMoveKind } from './offcut-move.row.js';
import { WoodStore } from './wood.store.js';

export interface OffcutMove {
  readonly lotId: LotId;
  readonly pitId: PitId | null;
  readonly kind: OffcutMoveKind;
  /** Negative where they went. */
  readonly pieces: number;
  readonly at: EpochS;
  readonly by: PersonId | null;
  readonly checkId?: string;
  readonly reason?: string;
}

/** Entries of the offcuts' ledger, with the sums of their lots. */
const MOVE = `
with moved as (
  insert into offcut_move (id, yard_id, lot_id, pit_id, kind, pieces, moved_at, crew_member_id, check_id, reason)
  select id, $1, lot_id, pit_id, kind, pieces, moved_at, crew_member_id, check_id, reason
  from jsonb_to_recordset($2::jsonb) as told (id uuid, lot_id uuid, pit_id uuid, kind text, pieces int, moved_at timestamptz, crew_member_id uuid, check_id uuid, reason text)
  returning lot_id, pieces
)
update lot set offcuts = offcuts + of_lot.pieces from (select lot_id, sum(pieces) as pieces from moved group by lot_id) as of_lot where lot.id = of_lot.lot_id`;

@Injectable()
export class OffcutsStore {
  constructor(
    private readonly ids: Ids,
    private readonly wood: WoodStore,
  ) {}

  /** Writes moves into the ledger, and what they change of the lots. The lots are held by whoever moves them. */
  async add(em: EntityManager, yardId: YardId, moves: readonly OffcutMove[]): Promise<void> {
    if (moves.length === 0) return;
    this.wood.forget(em);
    const told = moves.map(({ lotId, pitId, at, by, checkId, ...move }) => ({ ...move, id: this.ids.next(), lot_id: lotId, pit_id: pitId, moved_at: toIso(at), crew_member_id: by, check_id: checkId }));
    await em.query(MOVE, [yardId, JSON.stringify(told)]);
  }
}
