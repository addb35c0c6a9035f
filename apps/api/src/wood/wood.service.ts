import { Injectable } from '@nestjs/common';
import type { BuyLot, Done, MeasureLot, MoveWood, RecountLot, RouteInput, Routes, WoodMoved } from '@stokehold/domain/contract';
import { type EpochS, fromIso, type LotId, type PersonId, type PitId, type YardId } from '@stokehold/domain/quantity';
import type { PieceSize } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { type Lot, WoodStore } from './wood.store.js';

/** The splits that a check put on, and for which none lay on the cart. */
export interface Burned {
  readonly lotId: LotId | null;
  readonly short: number;
}

/** Lots, carts and the ledger of what moved between them. */
@Injectable()
export class Wood {
  constructor(
    private readonly commands: Commands,
    private readonly store: WoodStore,
    private readonly yards: Yards,
  ) {}

  buy(actor: Actor, command: BuyLot): Promise<Done> {
    return this.commands.run(actor, 'buy-lot', command, async (deed) => {
      const { lot, pieces } = command;
      if (await this.store.isNameTaken(deed.em, deed.yardId, lot.name)) {
        refused('name-taken', `There is a lot called ${lot.name} already. Give this one a name of its own.`, { name: lot.name });
      }
      await this.store.addLot(deed.em, deed.yardId, { ...lot, boughtAt: fromIso(lot.boughtAt), boughtPieces: pieces });
      await this.store.addMove(deed.em, deed.yardId, { lotId: lot.id, pitId: null, kind: 'bought', stackPieces: pieces, cartPieces: 0, at: deed.now, by: actor.person?.id ?? null });
      deed.tell({ kind: 'lot-changed', lotId: lot.id });
      return { done: true };
    });
  }

  measure(actor: Actor, command: MeasureLot & RouteInput<Routes['measureLot']>): Promise<Done> {
    return this.commands.run(actor, 'measure-lot', command, async (deed) => {
      await this.lot(deed, command.lotId);
      await this.store.addReading(deed.em, { lotId: command.lotId, moisture: command.moisture, at: fromIso(command.measuredAt), by: actor.person?.id ?? null });
      deed.tell({ kind: 'lot-changed', lotId: command.lotId });
      return { done: true };
    });
  }

  move(actor: Actor, command: MoveWood): Promise<WoodMoved> {
    return this.commands.run(actor, 'move-wood', command, async (deed) => {
      const { lotId, pitId, pieces, way } = command;
      await this.yards.pit(deed.em, pitId, deed.yardId);
      await this.store.holdLots(deed.em, [lotId]);
      const lot = await this.lot(deed, lotId);
      const onCart = await this.onCart(deed, pitId, lotId);
      if (way === 'pull' && lot.inStack < pieces) {
        refused('lot-empty', `${lot.name} has ${lot.inStack} left in the stack. Pull fewer, pull from another lot, or recount it.`, { left: lot.inStack });
      }
      if (way === 'bring-back' && onCart < pieces) {
        refused('cart-empty', `The cart holds ${onCart} of ${lot.name}. Bring back fewer, or recount the cart.`, { left: onCart });
      }
      const toCart = way === 'pull' ? pieces : -pieces;
      const kind = way === 'pull' ? 'pulled' : 'brought-back';
      await this.store.addMove(deed.em, deed.yardId, { lotId, pitId, kind, stackPieces: -toCart, cartPieces: toCart, at: deed.now, by: actor.person?.id ?? null });
      deed.tell({ kind: 'wood-moved', lotId, pitId });
      return { lotId, inStack: lot.inStack - toCart, onCart: onCart + toCart };
    });
  }

  recount(actor: Actor, command: RecountLot): Promise<WoodMoved> {
    return this.commands.run(actor, 'recount-lot', command, async (deed) => {
      const { lotId, pitId, found, reason } = command;
      if (pitId) await this.yards.pit(deed.em, pitId, deed.yardId);
      await this.store.holdLots(deed.em, [lotId]);
      const lot = await this.lot(deed, lotId);
      const onCart = pitId ? await this.onCart(deed, pitId, lotId) : 0;
      const stackPieces = pitId ? 0 : found - lot.inStack;
      const cartPieces = pitId ? found - onCart : 0;
      await this.store.addMove(deed.em, deed.yardId, { lotId, pitId, kind: 'recounted', stackPieces, cartPieces, at: deed.now, by: actor.person?.id ?? null, reason });
      deed.tell({ kind: 'wood-moved', lotId, pitId });
      return { lotId, inStack: lot.inStack + stackPieces, onCart: onCart + cartPieces };
    });
  }

  /**
   * Takes the splits of a check from the pit's cart: from the lot that was named, else from the one on top, then from the
   * next. What the cart does not hold is not invented: it comes back as `short`. Offcuts are not counted as splits.
   */
  async burn(deed: Deed, put: { pitId: PitId; checkId: string; splits: number; size: PieceSize; lotId?: LotId; at: EpochS; by: PersonId | null }): Promise<Burned> {
    if (put.splits === 0 || put.size === 'offcut') return { lotId: put.lotId ?? null, short: 0 };
    const cart = await this.store.carts(deed.em, deed.yardId, put.pitId);
    await this.store.holdLots(deed.em, cart.map(({ lotId }) => lotId));
    const inOrder = [...cart.filter(({ lotId }) => lotId === put.lotId), ...cart.filter(({ lotId }) => lotId !== put.lotId)];
    let open = put.splits;
    for (const { lotId, pieces } of inOrder) {
      const taken = Math.min(open, pieces);
      if (taken === 0) break;
      await this.store.addMove(deed.em, deed.yardId, { lotId, pitId: put.pitId, kind: 'burned', stackPieces: 0, cartPieces: -taken, at: put.at, by: put.by, checkId: put.checkId });
      open -= taken;
      deed.tell({ kind: 'wood-moved', lotId, pitId: put.pitId });
    }
    return { lotId: inOrder[0]?.lotId ?? put.lotId ?? null, short: open };
  }

  /** The split that a hand finds on the pit's cart: the lot pulled last. */
  async topOfCart(em: EntityManager, yardId: YardId, pitId: PitId): Promise<(Lot & { readonly onCart: number }) | undefined> {
    const cart = await this.store.carts(em, yardId, pitId);
    const top = cart[0];
    if (!top) return undefined;
    const [lot] = await this.store.lots(em, yardId, top.lotId);
    return lot && { ...lot, onCart: cart.reduce((sum, { pieces }) => sum + pieces, 0) };
  }

  private async onCart(deed: Deed, pitId: PitId, lotId: LotId): Promise<number> {
    const cart = await this.store.carts(deed.em, deed.yardId, pitId);
    return cart.find((one) => one.lotId === lotId)?.pieces ?? 0;
  }

  /** The lot; refuses with `lot-unknown` when the yard has no such lot. */
  async lot(deed: Deed, lotId: LotId): Promise<Lot> {
    const [lot] = await this.store.lots(deed.em, deed.yardId, lotId);
    return lot ?? refused('lot-unknown', 'There is no such lot in this yard. Open the woodyard to see what there is.');
  }
}
