import type { PitSettings, YardSettings } from '@stokehold/domain/contract';
import { dryBasis, type EpochS, HOUR_S, later, type LotId, type PitId } from '@stokehold/domain/quantity';
import { BURNS_UP_TO, type CookOnFire, cuttingFor, expectedDryKg, heatOfPieceJ, liesAcross, mixOfFire, mustLieAcross, netHeatJPerDryKg, type Pace, type Piece, pieceOfSize, wetMassKg } from '@stokehold/domain/wood';
import type { PullHour, PullLot, PullProblem, PullWay, WoodPile } from '@stokehold/scheduling/wood-pull';
import type { Lot, OnCart } from '../wood/index.js';

/** A pit that burns tonight, and what is known of it. */
export interface BurningPit {
  readonly pit: PitSettings;
  readonly lightAt: EpochS;
  readonly pace: Pace;
  /** Zones that hold food now, from the fire end; none while nothing lies there. */
  readonly loadedZones: readonly number[];
  /** From then on all food that lies there is wrapped. */
  readonly wrappedFrom: EpochS | undefined;
  /** What lies there, until it is wrapped or comes off, with the kitchen's wish of wood. */
  readonly smoked: readonly (CookOnFire & { readonly until: EpochS })[];
}
export interface PullFacts {
  readonly now: EpochS;
  readonly until: EpochS;
  readonly yard: Pick<YardSettings, 'woodPlace' | 'walkSpeedMPerS'>;
  readonly pits: readonly BurningPit[];
  /** Lots in the order in which they are opened; moisture as it is believed now. */
  readonly lots: readonly (Lot & { readonly nowMoisture: number })[];
  readonly carts: readonly OnCart[];
  /** Names of those on the shift who may saw; without any, no wood is pulled that would have to be trimmed. */
  readonly maySaw: readonly string[];
}

/** A fire's need is known to about this part of it. Source: common practice, no source. */
export const NEED_DEVIATION = 0.15;
/** Good wood holds up to 15 %. Source: common practice, no source. */
export const READY_AT = 0.15;
/** A cart holds 10 h of its pit's wood, and a little. Source: common practice, no source. */
const CART_S = 10 * HOUR_S * 1.2;
const GOOD_MOISTURE = dryBasis(0.12);
/** A cut on a guarded saw, carrying included: half a minute at a usual wage, in mills. Source: common practice, no source. */
const CUT_MILLS = 160;
const OPEN_LATER_MILLS = 5;

/** A fire burns in on offcuts for so long after it is lit. Source: common practice, no source. */
const LIGHTING_S = HOUR_S;
const OFFCUTS = '/offcuts';

/** Offcuts of a lot are a lot of their own in the pull. */
const offcutsOf = (lotId: LotId): LotId => `${lotId}${OFFCUTS}` as LotId;
/** The lot that wood of the pull was bought with. */
export const boughtLotOf = (lotId: LotId): LotId => (lotId.endsWith(OFFCUTS) ? (lotId.slice(0, -OFFCUTS.length) as LotId) : lotId);

/** Dry wood that a pit will want from one instant to another, neither before now nor before it is lit. */
export const wantedDryKg = ({ pace, lightAt }: BurningPit, now: EpochS, { from, until }: { readonly from: EpochS; readonly until: EpochS }): number => {
  const begins = Math.max(now, lightAt);
  return expectedDryKg(pace, Math.max(0, from - begins), Math.max(0, until - begins));
};

/** The rest of the night as a problem of the wood pull: hours of fires, piles of wood, ways to burn and to walk. */
export function pullProblemOf(facts: PullFacts): PullProblem {
  const pits = facts.pits.filter(({ lightAt }) => lightAt < facts.until && facts.until > facts.now);
  const places = ['stack', ...pits.map(({ pit }) => pit.id as string)];
  const spots = [facts.yard.woodPlace, ...pits.map(({ pit }) => ({ xM: pit.xM, yM: pit.yM }))];
  const walkS = spots.map((a) => spots.map((b) => Math.round(Math.hypot(a.xM - b.xM, a.yM - b.yM) / facts.yard.walkSpeedMPerS)));
  const inUse = facts.lots.filter(({ inStack, id }) => inStack > 0 || facts.carts.some(({ lotId }) => lotId === id));
  const cutOff = facts.lots.filter(({ offcuts }) => offcuts > 0);
  return {
    from: facts.now, places, walkS, promises: [],
    lots: [...inUse.map(lotOf), ...cutOff.map(offcutLotOf)],
    piles: [
      ...inUse.filter(({ inStack }) => inStack > 0).map(({ id, inStack }): WoodPile => ({ id, lotId: id, place: 'stack', pieces: inStack })),
      ...facts.carts.filter(({ pitId }) => pits.some(({ pit }) => pit.id === pitId)).map(({ pitId, lotId, pieces }): WoodPile => ({ id: `${pitId}/${lotId}`, lotId, place: pitId, cartOf: pitId, pieces })),
      ...cutOff.map(({ id, offcuts }): WoodPile => ({ id: offcutsOf(id), lotId: offcutsOf(id), place: 'stack', pieces: offcuts })),
    ],
    pits: pits.map((one) => ({ id: one.pit.id, place: one.pit.id, cartKg: one.pace.usualDryKgPerS * CART_S * 1.15, hours: hoursOf(one, facts) })),
    ways: pits.flatMap(({ pit }) => [...inUse.flatMap((lot) => wayOf(pit, lot, facts.maySaw.length > 0)), ...cutOff.flatMap((lot) => offcutWayOf(pit, lot))]),
  };
}

const pieceNow = (lot: PullFacts['lots'][number]): Piece => ({ ...lot, moisture: dryBasis(Math.min(1.4, lot.nowMoisture)) });

function lotOf(lot: PullFacts['lots'][number], nth: number): PullLot {
  return {
    id: lot.id, species: lot.species, pieceKg: wetMassKg(pieceNow(lot)), priceMills: Math.round((10 * lot.priceCents) / lot.boughtPieces),
    wetPoints: Math.max(0, Math.round((lot.nowMoisture - READY_AT) * 1000)), laterMills: nth * OPEN_LATER_MILLS,
  };
}

/** Free: the splits that they were cut from bear the price of the lot. */
function offcutLotOf(lot: PullFacts['lots'][number]): PullLot {
  return { ...lotOf(lot, 0), id: offcutsOf(lot.id), pieceKg: wetMassKg(pieceOfSize(pieceNow(lot), 'offcut')), priceMills: 0, offcut: true };
}

function offcutWayOf(pit: PitSettings, lot: PullFacts['lots'][number]): readonly PullWay[] {
  const piece = pieceOfSize(pieceNow(lot), 'offcut');
  const lies = liesAcross({ ...pit, lengthM: piece.lengthM });
  return lies === 'too-long' || lot.nowMoisture > BURNS_UP_TO ? [] : [{ pitId: pit.id, lotId: offcutsOf(lot.id), asIs: { heatJ: Math.max(1, Math.round(heatOfPieceJ(piece))), lies } }];
}

function wayOf(pit: PitSettings, lot: PullFacts['lots'][number], maySaw: boolean): readonly PullWay[] {
  if (lot.nowMoisture > BURNS_UP_TO) return [];
  const ids: { pitId: PitId; lotId: LotId } = { pitId: pit.id, lotId: lot.id };
  const heatJ = Math.round(heatOfPieceJ(pieceNow(lot)));
  const lies = liesAcross({ ...pit, lengthM: lot.lengthM });
  const cutting = maySaw ? cuttingFor(lot.lengthM, pit) : undefined;
  const trimmed = cutting && { heatJ: Math.max(1, Math.round((heatJ * cutting.pieces * cutting.pieceLengthM) / lot.lengthM)), trimMills: CUT_MILLS * cutting.cuts, cuts: cutting.cuts, offcuts: cutting.offcutM > 0 ? 1 : 0 };
  const asIs = lies === 'too-long' ? undefined : { heatJ, lies };
  return asIs || trimmed ? [{ ...ids, ...(asIs && { asIs }), ...(trimmed && { trimmed }) }] : [];
}

const wishedAt = ({ smoked }: BurningPit, at: EpochS): PullHour['mix'] => mixOfFire(smoked.filter(({ until }) => until > at)).map(({ species: one, ...share }) => ({ species: [one], ...share }));

/**
 * Whole hours of a fire, cut where offcuts begin and cease to do; the first and last are as long as they are. While nothing lies there,
 * it is reckoned as loaded to the fire end.
 */
function hoursOf(one: BurningPit, { now, until }: PullFacts): readonly PullHour[] {
  const across = one.loadedZones.length === 0 || mustLieAcross(one.loadedZones, one.pit.zones.length);
  const litUntil = later(one.lightAt, LIGHTING_S);
  const hours: PullHour[] = [];
  for (let at = Math.max(now, one.lightAt) as EpochS; at < until; ) {
    const cuts = [litUntil, one.wrappedFrom ?? until].filter((cut) => cut > at);
    const end = Math.min(later(at, HOUR_S), until, ...cuts) as EpochS;
    const needJ = Math.round(wantedDryKg(one, now, { from: at, until: end }) * netHeatJPerDryKg(GOOD_MOISTURE));
    const offcuts = at < litUntil || (one.wrappedFrom !== undefined && at >= one.wrappedFrom);
    hours.push({ from: at, until: end, needJ, spreadJ: Math.round(needJ * NEED_DEVIATION), across, offcuts, mix: wishedAt(one, at) });
    at = end;
  }
  return hours;
}
