import { Injectable } from '@nestjs/common';
import type { CookView, CutSettings } from '@stokehold/domain/contract';
import { airFor, type AirSeen, type Effects, type FoodCook, seenAlong } from '@stokehold/domain/food';
import { type CookId, type EpochS, fromIso, later, type PitId, seedFrom, type YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { FoodStore } from '../food/index.js';
import { type ChamberSeen, Fires } from '../pits/index.js';
import { Shifts } from '../shifts/index.js';
import { Yards } from '../yards/index.js';
import { cutFor, cutOf, cutsWith } from './cut-of.js';
import { CookingStore, type KeptEntry, type Stretch } from './cooking.store.js';
import { standing } from './log-lines.js';

/** Where a cook lies, for its air: the zone that holds most of it. */
interface Place {
  readonly pitId: PitId;
  readonly zone: number;
}
/** A cook with all that its forecast and its limits are reckoned from. */
export interface CookOnHand {
  readonly cook: CookView;
  readonly cut: CutSettings | undefined;
  readonly log: readonly KeptEntry[];
  readonly place: Place | undefined;
  /** What the forecast is asked with; absent while it is on no pit or its cut is not known. */
  readonly asked: FoodCook | undefined;
  /** The chambers in which it lay, while it lay there. */
  readonly pitAir: readonly { readonly at: EpochS; readonly tempC: number }[];
}

const mostOf = (cook: CookView): Place | undefined => [...cook.lies].sort((a, b) => b.pieces - a.pieces || a.zone - b.zone)[0];

/** Gathers cooks with their log, their air and what earlier cooks taught. */
@Injectable()
export class CooksOnHand {
  constructor(
    private readonly food: FoodStore,
    private readonly store: CookingStore,
    private readonly fires: Fires,
    private readonly shifts: Shifts,
    private readonly yards: Yards,
  ) {}

  /** @param placeOf  where a cook lay that lies nowhere any more */
  async of(em: EntityManager, yardId: YardId, now: EpochS, cooks: readonly CookView[], placeOf: ReadonlyMap<CookId, Place> = new Map()): Promise<CookOnHand[]> {
    const places = new Map(cooks.map((cook) => [cook.id, mostOf(cook) ?? placeOf.get(cook.id)]));
    const stretches = await this.store.stretches(em, cooks.map(({ id }) => id));
    const pitIds = [...new Set(stretches.map(({ pitId }) => pitId))].sort();
    const since = cooks.flatMap(({ onAt }) => (onAt ? [fromIso(onAt)] : [])).reduce((first, at) => Math.min(first, at) as EpochS, now);
    const cuts = cutsWith(await this.store.cuts(em, yardId));
    const log = await this.store.log(em, cooks.map(({ id }) => id));
    const learned = await this.store.learned(em, yardId);
    const air = await this.airs(em, yardId, now, pitIds, since);
    return cooks.map((cook) => {
      const ofCook = <T extends { readonly cookId: CookId }>(all: readonly T[]) => all.filter(({ cookId }) => cookId === cook.id);
      const own = { cook, cut: cutFor(cook, cuts), log: ofCook(log), place: places.get(cook.id) };
      const seen = airAlong(ofCook(stretches), air);
      return { ...own, asked: askedOf(own, now, seen, air, learned), pitAir: seen };
    });
  }

  /** Cooks on the pits, and those that came off lately or have been logged since. */
  async all(em: EntityManager, yardId: YardId, now: EpochS, loggedSinceS: number): Promise<CookView[]> {
    const logged = await this.store.cooksLogged(em, yardId, later(now, -loggedSinceS));
    return (await this.food.cooks(em, { yardId })).filter(
      ({ id, onAt, offAt, lies }) => onAt !== null && ((offAt === null && lies.length > 0) || logged.includes(id) || (offAt !== null && fromIso(offAt) > later(now, -loggedSinceS))),
    );
  }

  private async airs(em: EntityManager, yardId: YardId, now: EpochS, pitIds: readonly PitId[], since: EpochS): Promise<Airs> {
    const pits = await this.yards.pits(em, yardId);
    const tonight = (await this.shifts.running(em, yardId, now))?.pits ?? [];
    const fires = await this.fires.view(em, yardId, now);
    const course = pitIds.length === 0 ? [] : await this.fires.course(em, pitIds, since);
    return {
      seenOf: (pitId) => course.filter((one) => one.pitId === pitId),
      bandOf: (pitId) => tonight.find((one) => one.pitId === pitId)?.band ?? pits.find(({ id }) => id === pitId)?.band,
      zoneShiftK: ({ pitId, zone }) => {
        const fire = fires.find((one) => one.pitId === pitId)?.fire;
        const tempC = fire?.zoneTempC[zone];
        return fire && tempC !== undefined ? tempC - fire.chamberTempC.p50 : 0;
      },
    };
  }
}

interface Airs {
  readonly seenOf: (pitId: PitId) => readonly ChamberSeen[];
  readonly bandOf: (pitId: PitId) => { readonly lowC: number; readonly highC: number } | undefined;
  readonly zoneShiftK: (place: Place) => number;
}

/** A chamber's past as a zone saw it; a row that kept no zones says nothing of it. */
function inZone({ at, tempC, zoneShiftK }: ChamberSeen, zone: number): AirSeen {
  const shiftK = zoneShiftK?.[zone];
  return { at, tempC, ...(shiftK !== undefined && { zoneShiftK: shiftK }) };
}

/** The air that a cook truly had, wherever it lay. */
const airAlong = (stretches: readonly Stretch[], { seenOf }: Airs) =>
  seenAlong(stretches.map(({ pitId, zone, from, until }) => ({ from, ...(until !== undefined && { until }), seen: seenOf(pitId).map((seen) => inZone(seen, zone)) })));

/** A cook as the forecast takes it. */
function askedOf(
  { cook, cut, log, place }: Omit<CookOnHand, 'asked' | 'pitAir'>, now: EpochS, seen: readonly AirSeen[], air: Airs, learned: (kind: 'cut' | 'pit', ref: string) => Effects,
): FoodCook | undefined {
  const band = place && air.bandOf(place.pitId);
  if (!cut || !place || !band || cook.onAt === null) return undefined;
  const onAt = fromIso(cook.onAt);
  const lines = standing(log);
  const wrapped = lines.find(({ kind }) => kind === 'wrapped');
  return {
    cut: cutOf(cut),
    pieceKg: cook.weightKg / cook.pieces,
    onAt,
    air: airFor({ seen, onAt, now, bandMiddleC: (band.lowC + band.highC) / 2, zoneShiftK: air.zoneShiftK(place) }),
    wrap: wrapped?.wrappedIn ? { how: 'at', at: wrapped.at, kind: wrapped.wrappedIn } : { how: 'by-rule' },
    readings: lines.flatMap(({ kind, stage, at, tempC }) => (kind === 'reading' && stage === 'cooking' && tempC !== null && (cook.offAt === null || at <= fromIso(cook.offAt)) ? [{ at, tempC }] : [])),
    learned: { cut: learned('cut', cut.code), pit: learned('pit', place.pitId) },
    seed: seedFrom('cook', cook.id),
  };
}
