import { Injectable } from '@nestjs/common';
import type { CookView, PitSettings } from '@stokehold/domain/contract';
import { firePositionOf } from '@stokehold/domain/fire';
import { STARTING_CUTS, type Cut } from '@stokehold/domain/food';
import { epochS, type EpochS, fromIso, HOUR_S, later, seedFrom, type YardId } from '@stokehold/domain/quantity';
import type { KeptShift } from '@stokehold/domain/shift';
import { liesAcross, wetMassKg } from '@stokehold/domain/wood';
import type { LoadingCook, LoadingFacts, LoadingPit } from '@stokehold/scheduling/loading';
import type { EntityManager } from 'typeorm';
import { CookingCuts } from '../cooking/index.js';
import { FoodStore } from '../food/index.js';
import { Fires, type PitFire } from '../pits/index.js';
import { Shifts } from '../shifts/index.js';
import { Wood, WoodStore } from '../wood/index.js';
import { Yards } from '../yards/index.js';

/** Plans are made for times of whole five minutes, so that what changed nothing asks for no new plan. */
const GRAIN_S = 300;
/** People are asked for so far ahead. */
const AHEAD_S = 40 * HOUR_S;
/** Where no shift says who is there: one for every three pits, who can be held by one (common practice, no source). */
const PITS_PER_PERSON = 3;
/** What a kilogram of wood and an hour of a person cost while the yard has said nothing, cents. */
const USUAL_WOOD_CENTS_PER_KG = 30;
const USUAL_CREW_CENTS_PER_HOUR = 2000;

export const grained = (at: EpochS): EpochS => epochS(Math.ceil(at / GRAIN_S) * GRAIN_S);

const mean = (numbers: readonly number[], usual: number) => (numbers.length === 0 ? usual : numbers.reduce((sum, one) => sum + one, 0) / numbers.length);

/** What the yard has for a pit: its fire, who is there, and how long the splits in its stacks are, m. */
interface AroundPit {
  readonly burning: PitFire | undefined;
  readonly shifts: readonly KeptShift[];
  readonly stacked: readonly number[];
}

/** Gathers what the loading and the cook plan are made from. */
@Injectable()
export class LoadingGathering {
  constructor(
    private readonly yards: Yards,
    private readonly food: FoodStore,
    private readonly cuts: CookingCuts,
    private readonly fires: Fires,
    private readonly shifts: Shifts,
    private readonly wood: Wood,
    private readonly lots: WoodStore,
  ) {}

  async facts(em: EntityManager, yardId: YardId, at: EpochS): Promise<LoadingFacts> {
    const now = grained(at);
    const pits = (await this.yards.pits(em, yardId)).filter(({ retired }) => !retired);
    const shifts = await this.shifts.between(em, yardId, at, later(at, AHEAD_S));
    const fires = await this.fires.view(em, yardId, at);
    const cutOf = await this.cuts.of(em, yardId);
    const cooks = (await this.food.cooks(em, { yardId })).filter(({ offAt }) => offAt === null);
    const lots = await this.lots.lots(em, yardId);
    const stacked = lots.filter(({ inStack }) => inStack > 0).map(({ lengthM }) => lengthM);
    const standing = await Promise.all(pits.map((pit) => this.pit(em, yardId, pit, { burning: fires.find(({ pitId }) => pitId === pit.id), shifts, stacked })));
    const rates = (await this.yards.crew(em, yardId)).filter(({ left }) => !left).map(({ rateCentsPerHour }) => rateCentsPerHour as number);
    return {
      now, pits: standing, cooks: cooks.map((cook) => cookOf(cook, cutOf(cook))), services: (await this.food.services(em, { yardId })).map(({ id, readyBy }) => ({ id, readyBy: fromIso(readyBy) })),
      crew: crewOf(shifts, now, pits.length), woodCentsPerKg: Math.round(mean(lots.map((lot) => lot.priceCents / Math.max(1, lot.boughtPieces * wetMassKg(lot))), USUAL_WOOD_CENTS_PER_KG)),
      crewCentsPerHour: Math.round(mean(rates, USUAL_CREW_CENTS_PER_HOUR)), seed: seedFrom('loading', yardId),
    };
  }

  private async pit(em: EntityManager, yardId: YardId, pit: PitSettings, { burning, shifts, stacked }: AroundPit): Promise<LoadingPit> {
    const fire = burning?.fire ?? undefined;
    const top = await this.wood.topOfCart(em, yardId, pit.id);
    const lieOf = (lengthM: number) => liesAcross({ lengthM, fireboxDiameterM: pit.fireboxDiameterM, fireboxLengthM: pit.fireboxLengthM });
    const tonight = shifts.flatMap((shift) => shift.pits).find(({ pitId }) => pitId === pit.id);
    return {
      id: pit.id, chamberLengthM: pit.chamberLengthM, chamberDiameterM: pit.chamberDiameterM, fireboxLengthM: pit.fireboxLengthM, fireboxDiameterM: pit.fireboxDiameterM,
      zoneLengthsM: pit.zones.map(({ lengthM }) => lengthM), band: tonight?.band ?? pit.band, lit: fire !== undefined && fire.mode !== 'out',
      zoneShiftK: fire && fire.mode === 'burning' ? fire.zoneTempC.map((tempC) => Math.round(tempC - fire.chamberTempC.p50)) : [],
      position: top ? firePositionOf(lieOf(top.lengthM)) : 'door',
      longerWood: [...stacked, ...(top ? [top.lengthM] : [])].some((lengthM) => lieOf(lengthM) === 'lengthwise'),
    };
  }
}

/** A cut that the yard does not know cooks like the first of its outline. */
const likeIt = (cook: CookView): Cut => STARTING_CUTS.find(({ silhouette }) => silhouette === cook.shape) ?? STARTING_CUTS[0]!;

function cookOf(cook: CookView, known: Cut | undefined): LoadingCook {
  const most = [...cook.lies].sort((a, b) => b.pieces - a.pieces || a.zone - b.zone)[0];
  const { forecast } = cook;
  const done = forecast && [forecast.p10At, forecast.p50At, forecast.p90At, forecast.p95At].map((at) => (at === null ? undefined : grained(fromIso(at))));
  return {
    id: cook.id, serviceId: cook.serviceId, cut: known ?? likeIt(cook), pieces: cook.pieces, weightKg: cook.weightKg,
    ...(most && cook.onAt !== null && { on: { pitId: most.pitId, at: fromIso(cook.onAt) } }), ...(cook.comesOffAt !== null && { comesOffAt: fromIso(cook.comesOffAt) }),
    ...(done && done.every((at) => at !== undefined) && { doneAt: done as unknown as NonNullable<LoadingCook['doneAt']> }),
  };
}

/** How many people are there, from change to change. */
function crewOf(shifts: readonly KeptShift[], now: EpochS, pits: number): LoadingFacts['crew'] {
  const people = shifts.flatMap((shift) => shift.people).filter(({ endsAt }) => endsAt > now);
  if (people.length === 0) return [{ from: now, until: later(now, AHEAD_S), people: Math.max(1, Math.ceil(pits / PITS_PER_PERSON)) }];
  const marks = [...new Set([now as number, ...people.flatMap(({ startsAt, endsAt }) => [startsAt as number, endsAt as number])])].filter((mark) => mark >= now).sort((a, b) => a - b);
  return marks.slice(0, -1).map((from, i) => ({ from: epochS(from), until: epochS(marks[i + 1]!), people: people.filter(({ startsAt, endsAt }) => startsAt <= from && endsAt > from).length }));
}
