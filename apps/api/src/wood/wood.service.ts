import { Injectable } from '@nestjs/common';
import type { BuyLot, Done, LotBought, LotRead, MeasureLot, MoveWood, ReadLot, RecountLot, RouteInput, Routes, WoodMoved } from '@stokehold/domain/contract';
import { type DeviceId, type EpochS, fromIso, type LotId, type PersonId, type PitId, type YardId } from '@stokehold/domain/quantity';
import { cordsOf, correctionOf, type DeliveryRemark, type Measure, type MeterReading, readMeter, takeIn, trimmedLeft } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { type Actor, Commands, type Deed, refused } from '../platform/index.js';
import { Yards } from '../yards/index.js';
import { type Lot, type OnCart, type WoodMove, WoodStore } from './wood.store.js';

/** The splits that a check put on, and for which none lay on the cart. */
export interface Burned {
  readonly lotId: LotId | null;
  readonly short: number;
}

/** A corrected reading holds within two points; over fibre saturation a pin meter says only that it is wet. [FPL-GTR-6] */
const READING_DEVIATION = 0.02;
const METER_UP_TO = 0.3;

const remarkView = (remark: DeliveryRemark): LotBought['remarks'][number] => ({
  code: remark.code, ...(remark.code === 'measures-disagree' && { second: remark.second, ratio: remark.ratio }),
});

/** Lots, carts and the ledger of what moved between them. */
@Injectable()
export class Wood {
  constructor(
    private readonly commands: Commands,
    private readonly store: WoodStore,
    private readonly yards: Yards,
  ) {}

  buy(actor: Actor, command: BuyLot): Promise<LotBought> {
    return this.commands.run(actor, 'buy-lot', command, async (deed) => {
      const { lot, pieces } = command;
      if (await this.store.isNameTaken(deed.em, deed.yardId, lot.name)) {
        refused('name-taken', `There is a lot called ${lot.name} already. Give this one a name of its own.`, { name: lot.name });
      }
      const remarks = await this.remarksOn(deed, command);
      await this.store.addLot(deed.em, deed.yardId, {
        ...lot, boughtAt: fromIso(lot.boughtAt), boughtPieces: pieces, cutAt: command.cutAt === undefined ? null : fromIso(command.cutAt),
        splitAt: command.splitAt === undefined ? null : fromIso(command.splitAt), lengthDeviationM: command.lengthDeviationM ?? 0,
      });
      await this.store.addMoves(deed, actor.device.id, [{ lotId: lot.id, pitId: null, kind: 'bought', stackPieces: pieces, cartPieces: 0, at: deed.now, by: actor.person?.id ?? null }]);
      deed.tell({ kind: 'lot-changed', lotId: lot.id });
      return { done: true, remarks: remarks.map(remarkView) };
    });
  }

  /** What about a delivery does not add up: beside its own measures, and beside what other lots cost. */
  private async remarksOn(deed: Deed, { lot, pieces, also }: BuyLot): Promise<readonly DeliveryRemark[]> {
    const pits = (await this.yards.pits(deed.em, deed.yardId)).filter(({ retired }) => !retired);
    const prices = (await this.store.lots(deed.em, deed.yardId)).filter(({ priceCents }) => priceCents > 0).map((one) => one.priceCents / cordsOf(one.boughtPieces, one));
    const usual = [...prices].sort((a, b) => a - b)[Math.floor(prices.length / 2)];
    const measures: readonly Measure[] = [{ by: 'pieces', pieces }, ...(also ?? [])];
    const taken = takeIn({ piece: lot, measures, priceCents: lot.priceCents }, { fireboxes: pits, ...(usual !== undefined && { usualCentsPerCord: usual }) });
    return taken.ok ? taken.value.remarks : [];
  }

  measure(actor: Actor, command: MeasureLot & RouteInput<Routes['measureLot']>): Promise<Done> {
    return this.commands.run(actor, 'measure-lot', command, async (deed) => {
      await this.lot(deed, command.lotId);
      await this.store.addReading(deed.em, { lotId: command.lotId, moisture: command.moisture, at: fromIso(command.measuredAt), deviation: READING_DEVIATION, atLeast: command.moisture > METER_UP_TO, by: actor.person?.id ?? null });
      deed.tell({ kind: 'lot-changed', lotId: command.lotId });
      return { done: true };
    });
  }

  /** What a meter showed, corrected for its basis, the temperature of the wood and the face; kept beside what was shown. */
  read(actor: Actor, command: ReadLot & RouteInput<Routes['readLot']>): Promise<LotRead> {
    return this.commands.run(actor, 'read-lot', command, async (deed) => {
      await this.lot(deed, command.lotId);
      const { shownPercent, basis, face, woodTempC } = command;
      const reading: MeterReading = { shownPercent, basis, face, ...(woodTempC !== null && { woodTempC }) };
      const read = readMeter(reading);
      if (!read.ok) return refused('not-a-moisture', 'This is no moisture of wood that a meter can show. Read it again, and say whether the meter speaks of dry or of wet mass.', { percent: shownPercent });
      const { moisture, deviation, atLeast, remarks } = read.value;
      if (moisture < 0.02 || moisture > 1.2) refused('not-a-moisture', 'After its corrections this reading is no moisture of wood. Read it again on a fresh inside face.', { percent: shownPercent });
      await this.store.addReading(deed.em, { lotId: command.lotId, moisture, at: fromIso(command.measuredAt), deviation, atLeast, by: actor.person?.id ?? null, shown: { percent: shownPercent, basis, woodTempC } });
      deed.tell({ kind: 'lot-changed', lotId: command.lotId });
      return { moisture, deviationFrac: deviation, atLeast, remarks: [...remarks] };
    });
  }

  move(actor: Actor, command: MoveWood): Promise<WoodMoved> {
    return this.commands.run(actor, 'move-wood', command, async (deed) => {
      const { lotId, pitId, pieces, way } = command;
      await this.yards.pit(deed.em, pitId, deed.yardId);
      const lot = await this.heldLot(deed, lotId);
      const { pieces: onCart, trimmed } = await this.onCart(deed, pitId, lotId);
      if (way === 'pull' && lot.inStack < pieces) {
        refused('lot-empty', `${lot.name} has ${lot.inStack} left in the stack. Pull fewer, pull from another lot, or recount it.`, { left: lot.inStack });
      }
      if (way === 'bring-back' && onCart < pieces) {
        refused('cart-empty', `The cart holds ${onCart} of ${lot.name}. Bring back fewer, or recount the cart.`, { left: onCart });
      }
      const toCart = way === 'pull' ? pieces : -pieces;
      const kind = way === 'pull' ? 'pulled' : 'brought-back';
      await this.store.addMoves(deed, actor.device.id, [{ lotId, pitId, kind, stackPieces: -toCart, cartPieces: toCart, trimmedPieces: trimmedLeft({ pieces: onCart, trimmed }, -toCart, 'taken-away') - trimmed, at: deed.now, by: actor.person?.id ?? null }]);
      deed.tell({ kind: 'wood-moved', lotId, pitId });
      return { lotId, inStack: lot.inStack - toCart, onCart: onCart + toCart };
    });
  }

  recount(actor: Actor, command: RecountLot): Promise<WoodMoved> {
    return this.commands.run(actor, 'recount-lot', command, async (deed) => {
      const { lotId, pitId, found, reason, book } = command;
      if (pitId) await this.yards.pit(deed.em, pitId, deed.yardId);
      const lot = await this.heldLot(deed, lotId);
      const { pieces: onCart, trimmed } = pitId ? await this.onCart(deed, pitId, lotId) : { pieces: 0, trimmed: 0 };
      const correction = correctionOf(pitId ? onCart : lot.inStack, { found, reason, ...(book !== undefined && { bookSeen: book }) });
      if (!correction.ok) {
        const now = pitId ? onCart : lot.inStack;
        return refused('counted-meanwhile', `The book said ${book ?? now} when this count began and says ${now} now: somebody moved or counted wood meanwhile. Count again.`, { before: book ?? now, now });
      }
      const stackPieces = pitId ? 0 : correction.value.pieces;
      const cartPieces = pitId ? correction.value.pieces : 0;
      await this.store.addMoves(deed, actor.device.id, [{ lotId, pitId, kind: 'recounted', stackPieces, cartPieces, trimmedPieces: trimmedLeft({ pieces: onCart, trimmed }, -cartPieces, 'taken-away') - trimmed, at: deed.now, by: actor.person?.id ?? null, reason }]);
      deed.tell({ kind: 'wood-moved', lotId, pitId });
      return { lotId, inStack: lot.inStack + stackPieces, onCart: onCart + cartPieces };
    });
  }

  /**
   * Takes the splits of a check from the pit's cart: from the lot that was named, else from the one on top, then from the
   * next. What the cart does not hold is not invented: it comes back as `short`.
   */
  async burn(deed: Deed, put: { pitId: PitId; checkId: string; splits: number; lotId?: LotId; at: EpochS; by: PersonId | null; deviceId: DeviceId | null }): Promise<Burned> {
    if (put.splits === 0) return { lotId: put.lotId ?? null, short: 0 };
    const order = (await this.store.carts(deed.em, deed.yardId)).filter(({ pitId }) => pitId === put.pitId).map(({ lotId }) => lotId);
    const held = await this.store.holdCart(deed.em, deed.yardId, put.pitId);
    const rank = (lotId: LotId) => (lotId === put.lotId ? -1 : order.indexOf(lotId));
    const inOrder = held.sort((a, b) => rank(a.lotId) - rank(b.lotId));
    let open = put.splits;
    const moves = inOrder.flatMap(({ lotId, pieces, trimmed }): readonly WoodMove[] => {
      const taken = Math.min(open, pieces);
      open -= taken;
      return taken > 0 ? [{ lotId, pitId: put.pitId, kind: 'burned', stackPieces: 0, cartPieces: -taken, trimmedPieces: trimmedLeft({ pieces, trimmed }, taken, 'burned') - trimmed, at: put.at, by: put.by, checkId: put.checkId }] : [];
    });
    await this.store.addMoves(deed, put.deviceId, moves);
    for (const { lotId } of moves) deed.tell({ kind: 'wood-moved', lotId, pitId: put.pitId });
    return { lotId: inOrder[0]?.lotId ?? put.lotId ?? null, short: open };
  }

  /** The split that a hand finds on the pit's cart: the lot pulled last. */
  async topOfCart(em: EntityManager, yardId: YardId, pitId: PitId): Promise<(Lot & { readonly onCart: number }) | undefined> {
    const [carts, lots] = await Promise.all([this.store.carts(em, yardId), this.store.lots(em, yardId)]);
    const cart = carts.filter((one) => one.pitId === pitId);
    const lot = lots.find(({ id }) => id === cart[0]?.lotId);
    return lot && { ...lot, onCart: cart.reduce((sum, { pieces }) => sum + pieces, 0) };
  }

  /** Offcuts of all lots that the book knows of: they lie in the yard, for whichever fire wants one. */
  async offcutsBooked(em: EntityManager, yardId: YardId): Promise<number> {
    return (await this.store.lots(em, yardId)).reduce((sum, { offcuts }) => sum + offcuts, 0);
  }

  /** What lies of a lot on a pit's cart; asked after the lot is held, nobody changes it until the transaction ends. */
  async onCart(deed: Deed, pitId: PitId, lotId: LotId): Promise<Pick<OnCart, 'pieces' | 'trimmed'>> {
    const carts = await this.store.carts(deed.em, deed.yardId);
    return carts.find((one) => one.pitId === pitId && one.lotId === lotId) ?? { pieces: 0, trimmed: 0 };
  }

  /** The lot; refuses with `lot-unknown` when the yard has no such lot. */
  async lot(deed: Deed, lotId: LotId): Promise<Lot> {
    const lots = await this.store.lots(deed.em, deed.yardId);
    return lots.find(({ id }) => id === lotId) ?? lotUnknown();
  }

  private async heldLot(deed: Deed, lotId: LotId): Promise<Lot> {
    const [lot] = await this.store.holdLots(deed.em, deed.yardId, [lotId]);
    return lot ?? lotUnknown();
  }
}

/** Refuses a lot that is not there. */
export const lotUnknown = () => refused('lot-unknown', 'There is no such lot in this yard. Open the woodyard to see what there is.');
