import { Injectable } from '@nestjs/common';
import type { BurnOffcuts, OffcutsBurned, OffcutsCounted, RecountOffcuts, SplitsTrimmed, TrimSplits } from '@stokehold/domain/contract';
import { type EpochS, type LotId, type PersonId, type PitId } from '@stokehold/domain/quantity';
import { correctionOf, cuttingFor, drawOffcuts, longSplitM } from '@stokehold/domain/wood';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { OffcutsStore } from './offcuts.store.js';
import { lotUnknown, Wood } from './wood.service.js';
import { type Lot, WoodStore } from './wood.store.js';

/** Trimming, and the offcuts that it leaves: for lighting, and for after the wrap. */
@Injectable()
export class Offcuts {
  constructor(
    private readonly commands: Commands,
    private readonly store: WoodStore,
    private readonly offcuts: OffcutsStore,
    private readonly wood: Wood,
    private readonly yards: Yards,
  ) {}

  /** Long splits of a cart become such as lie across; each may leave an offcut, and become more than one piece. */
  trim(actor: Actor, command: TrimSplits): Promise<SplitsTrimmed> {
    return this.commands.run(actor, 'trim-splits', command, async (deed) => {
      const { lotId, pitId, splits } = command;
      const pit = await this.yards.pit(deed.em, pitId, deed.yardId);
      const lot = await this.held(deed, lotId);
      const long = longSplitM({ lengthM: lot.lengthM, lengthDeviationM: lot.lengthDeviationM, firebox: pit, across: true });
      const cutting = cuttingFor(long, pit) ?? refused('lies-as-it-is', `${lot.name} lies across the firebox of ${pit.name} as it is. Nothing is to be trimmed.`, { lot: lot.name, pit: pit.name });
      const { pieces, trimmed } = await this.wood.onCart(deed, pitId, lotId);
      if (pieces - trimmed < splits) refused('cart-empty', `The cart holds ${pieces - trimmed} of ${lot.name} that are not trimmed. Trim fewer, or recount the cart.`, { left: pieces - trimmed });
      const by = actor.person?.id ?? null;
      const came = splits * (cutting.pieces - 1);
      await this.store.addMoves(deed, actor.device.id, [{ lotId, pitId, kind: 'trimmed', stackPieces: 0, cartPieces: came, trimmedPieces: splits * cutting.pieces, at: deed.now, by }]);
      const left = cutting.offcutM > 0 ? splits : 0;
      await this.offcuts.add(deed.em, deed.yardId, left > 0 ? [{ lotId, pitId, kind: 'trimmed', pieces: left, at: deed.now, by }] : []);
      deed.tell({ kind: 'wood-moved', lotId, pitId });
      return { lotId, onCart: pieces + came, trimmed: trimmed + splits * cutting.pieces, cuts: splits * cutting.cuts, offcuts: lot.offcuts + left };
    });
  }

  /** Offcuts that went on at lighting. */
  burnAtLighting(actor: Actor, command: BurnOffcuts): Promise<OffcutsBurned> {
    return this.commands.run(actor, 'burn-offcuts', command, async (deed) => {
      const { pitId, pieces } = command;
      await this.yards.pit(deed.em, pitId, deed.yardId);
      const { open } = await this.burn(deed, { pitId, pieces, at: deed.now, by: actor.person?.id ?? null });
      const left = await this.wood.offcutsBooked(deed.em, deed.yardId);
      return { left, open };
    });
  }

  recount(actor: Actor, command: RecountOffcuts): Promise<OffcutsCounted> {
    return this.commands.run(actor, 'recount-offcuts', command, async (deed) => {
      const { lotId, found, reason, book } = command;
      const lot = await this.held(deed, lotId);
      const correction = correctionOf(lot.offcuts, { found, reason, ...(book !== undefined && { bookSeen: book }) });
      if (!correction.ok) {
        return refused('counted-meanwhile', `The book said ${book ?? lot.offcuts} offcuts when this count began and says ${lot.offcuts} now: somebody cut or burned some meanwhile. Count again.`, { before: book ?? lot.offcuts, now: lot.offcuts });
      }
      await this.offcuts.add(deed.em, deed.yardId, [{ lotId, pitId: null, kind: 'recounted', pieces: correction.value.pieces, at: deed.now, by: actor.person?.id ?? null, reason }]);
      deed.tell({ kind: 'wood-moved', lotId, pitId: null });
      return { lotId, offcuts: found };
    });
  }

  /** Takes offcuts that went on a fire from the lots that have some; what the book knows nothing of comes back as `open`. */
  async burn(deed: Deed, put: { readonly pitId: PitId; readonly pieces: number; readonly lotId?: LotId; readonly checkId?: string; readonly at: EpochS; readonly by: PersonId | null }): Promise<{ readonly lotId: LotId | null; readonly open: number }> {
    const known = (await this.store.lots(deed.em, deed.yardId)).filter(({ offcuts }) => offcuts > 0);
    if (known.length === 0 || put.pieces === 0) return { lotId: put.lotId ?? null, open: put.pieces };
    const lots = await this.store.holdLots(deed.em, deed.yardId, known.map(({ id }) => id));
    const piles = lots.map(({ id, offcuts, boughtAt }) => ({ lotId: id, offcuts, boughtAt })).sort((a, b) => a.boughtAt - b.boughtAt);
    const { drawn, open } = drawOffcuts(piles, put.pieces, put.lotId);
    const { pitId, checkId, at, by } = put;
    await this.offcuts.add(deed.em, deed.yardId, drawn.map(({ lotId, pieces }) => ({ lotId, pitId, kind: 'burned', pieces: -pieces, at, by, ...(checkId !== undefined && { checkId }) })));
    for (const { lotId } of drawn) deed.tell({ kind: 'wood-moved', lotId, pitId });
    return { lotId: drawn[0]?.lotId ?? put.lotId ?? null, open };
  }

  private async held(deed: Deed, lotId: LotId): Promise<Lot> {
    const [lot] = await this.store.holdLots(deed.em, deed.yardId, [lotId]);
    return lot ?? lotUnknown();
  }
}
