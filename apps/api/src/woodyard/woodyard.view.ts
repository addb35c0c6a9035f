import { Injectable } from '@nestjs/common';
import type { CartLastsView, PurchaseView, TrimView, WoodyardView, YardLastsView } from '@stokehold/domain/contract';
import { dryBasis, type EpochS, HOUR_S, later, type PitId, toIso, type YardId } from '@stokehold/domain/quantity';
import {
  type CartState, cartLasts, dryMassKg, forecastSeasoning, liesAcross, mayBurn, mustLieAcross, purchasesFor, type PlannedNight, stackAir, type Supply, trimList, USUAL_SPLIT, usualDryKgPerS, yardLasts,
} from '@stokehold/domain/wood';
import type { CartLoad } from '@stokehold/scheduling/wood-pull';
import { DataSource } from 'typeorm';
import { Clock } from '../platform/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { type NightWood, NightWoods } from './night-wood.service.js';
import { NEED_DEVIATION, READY_AT, wantedDryKg } from './pull-facts.js';
import { beforeOf, Pulls, reasonToBalance, viewOf } from './pulls.service.js';
import { seasoningView } from './woodyard.forecast.js';
import { WoodyardStore } from './woodyard.store.js';

/** From the word to haul until the wood lies there. Source: common practice, no source. */
const HAUL_S = 15 * 60;
/** Seasoned wood is there a week after it is ordered. Source: common practice, no source. */
const DELIVERY_S = 7 * 86_400;
const AHEAD_S = 730 * 86_400;
/** Weeks that shifts are looked ahead for, and looked back for where none are planned. */
const BUY_AHEAD_S = 56 * 86_400;

/** The woodyard in one look: what is ready, what to trim, what to buy, whether it lasts the night. */
@Injectable()
export class WoodyardViews {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    private readonly night: NightWoods,
    private readonly store: WoodyardStore,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
    private readonly pulls: Pulls,
  ) {}

  async view(yardId: YardId): Promise<WoodyardView> {
    const em = this.database.manager;
    const now = this.clock.now(yardId);
    const night = await this.night.gather(em, yardId, now);
    const row = await this.store.currentPull(em, yardId);
    const current = row && row.shiftId === night.shift?.id ? row : undefined;
    const states = cartStates(night, now);
    const before = current && beforeOf(current, now, await this.pulls.openHauls(em, yardId, now));
    const reason = before && night.facts ? reasonToBalance(night.facts, current, before) : undefined;
    return {
      climate: night.climate.months, isClimateAssumed: night.climate.isAssumed, readyAtFrac: READY_AT,
      lots: night.lots.map(seasoningView), trim: trimView(night, before?.toHaul ?? []), maySaw: night.facts ? [...night.facts.maySaw] : null, carts: states.map((cart) => lastsView(cart, now)), yard: yardView(night, states, now),
      purchases: await this.purchases(yardId, night, now), pull: current ? viewOf(current) : null, repull: reason ? { because: reason.because, pitId: reason.because === 'stock-gone' ? null : reason.where } : null,
    };
  }

  /** What to buy for the shifts that are planned, each burning what its pits usually burn. */
  private async purchases(yardId: YardId, night: NightWood, now: EpochS): Promise<PurchaseView[]> {
    const em = this.database.manager;
    const pits = await this.yards.pits(em, yardId);
    const nights = (await this.shifts.between(em, yardId, now, later(now, BUY_AHEAD_S))).filter(({ from }) => from > now).map((shift): PlannedNight => ({
      at: shift.from, deviationFrac: NEED_DEVIATION,
      dryKg: shift.pits.reduce((sum, { pitId, lightAt }) => {
        const pit = pits.find(({ id }) => id === pitId);
        return pit ? sum + usualDryKgPerS({ lengthM: pit.chamberLengthM, diameterM: pit.chamberDiameterM }) * Math.max(0, shift.until - lightAt) : sum;
      }, 0),
    }));
    const tonight: PlannedNight[] = night.facts ? [{ at: now, deviationFrac: NEED_DEVIATION, dryKg: cartStates(night, now).reduce((sum, { dryKgPerS, until }) => sum + dryKgPerS * Math.max(0, until - now), 0) }] : [];
    const stock = night.lots.map(({ lot, seasoning }) => ({ dryKg: dryMassKg(lot) * (lot.inStack + lot.onCarts), seasoning }));
    return purchasesFor([...tonight, ...nights], stock, supplyOf(night, now), now).map(({ neededBy, cords, dryKg, orderSeasonedBy, orderGreenBy, how }) => ({
      neededBy: toIso(neededBy), cords, dryKg, orderSeasonedBy: toIso(orderSeasonedBy), orderGreenBy: orderGreenBy === undefined ? null : toIso(orderGreenBy), how,
    }));
  }
}

/** The wood that the yard has most of, and how long it takes here from green. */
function supplyOf({ lots, climate }: NightWood, now: EpochS): Supply {
  const most = [...lots].sort((a, b) => b.lot.boughtPieces - a.lot.boughtPieces)[0]?.lot;
  const species = most?.species ?? 'white-oak';
  const green = forecastSeasoning({ species, thicknessM: most?.thicknessM ?? 0.092, cutAt: now, readings: [] }, stackAir(climate), now, dryBasis(READY_AT));
  return { species, deliveryS: DELIVERY_S, ...(green.latestAt !== undefined && green.latestAt - now < AHEAD_S && { greenReadyS: green.latestAt - now }) };
}

function cartStates({ pits, carts, lots, facts }: NightWood, now: EpochS): readonly CartState<PitId>[] {
  if (!facts) return [];
  return pits.map((one) => {
    const own = carts.filter(({ pitId }) => pitId === one.pit.id);
    const dryKg = own.reduce((sum, { lotId, pieces }) => sum + pieces * dryMassKg(lots.find(({ lot }) => lot.id === lotId)?.lot ?? USUAL_SPLIT), 0);
    const begins = Math.max(now, one.lightAt) as EpochS;
    const burnsS = Math.max(1, facts.until - begins);
    const rate = wantedDryKg(one, now, { from: begins, until: later(begins, burnsS) }) / burnsS;
    return { pitId: one.pit.id, dryKg: Math.min(5000, dryKg), dryKgPerS: rate, rateDeviationFrac: NEED_DEVIATION, until: later(facts.until, now - begins), haulS: HAUL_S };
  });
}

function lastsView(cart: ReturnType<typeof cartStates>[number], now: EpochS): CartLastsView {
  const { pitId, state, lastsS, lastsAtLeastS, haulBy, missingKg } = cartLasts(cart, now);
  const most = 7 * 24 * HOUR_S;
  return { pitId, state, lastsS: Math.min(most, lastsS), lastsAtLeastS: Math.min(most, lastsAtLeastS), haulBy: haulBy === undefined ? null : toIso(haulBy), missingKg };
}

function yardView({ lots }: NightWood, states: ReturnType<typeof cartStates>, now: EpochS): YardLastsView {
  const ready = lots.filter(({ state }) => state === 'ready');
  const { state, neededKg, neededAtMostKg, leftKg, lastsS } = yardLasts(states, ready.reduce((sum, { lot }) => sum + lot.inStack * dryMassKg(lot), 0), now);
  return { state, neededKg, neededAtMostKg, leftKg, lastsS: lastsS ?? null };
}

/** What must be cut of the wood that lies on the carts and of what is still to be hauled to them. */
function trimView({ pits, lots, carts }: NightWood, toHaul: readonly CartLoad[]): TrimView[] {
  const planned = toHaul.flatMap(({ pitId, wood }) => wood.filter(({ isOffcut }) => !isOffcut).map(({ lotId, pieces }) => ({ pitId, lotId, pieces })));
  const long = carts.map(({ pitId, lotId, pieces, trimmed }) => ({ pitId, lotId, pieces: pieces - trimmed }));
  const meant = [...long, ...planned];
  const wanted = pits.flatMap(({ pit, loadedZones }) => {
    const across = loadedZones.length === 0 || mustLieAcross(loadedZones, pit.zones.length);
    return lots.flatMap(({ lot }) => {
      const splits = meant.filter(({ pitId, lotId }) => pitId === pit.id && lotId === lot.id).reduce((sum, { pieces }) => sum + pieces, 0);
      const mayAsIs = mayBurn(liesAcross({ ...pit, lengthM: lot.lengthM }), across);
      return splits > 0 && (!mayAsIs || lot.lengthDeviationM > 0) ? [{ pitId: pit.id, lotId: lot.id, splits, lengthM: lot.lengthM, lengthDeviationM: lot.lengthDeviationM, firebox: pit, across }] : [];
    });
  });
  return trimList(wanted).map(({ pitId, lotId, splits, cutting, cuts, offcuts, pieces }) => ({
    pitId, lotId, splits, pieces, cuts, offcuts, pieceLengthM: cutting.pieceLengthM, offcutM: cutting.offcutM, short: cutting.short,
  }));
}
