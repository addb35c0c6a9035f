import { Injectable } from '@nestjs/common';
import type { CookView } from '@stokehold/domain/contract';
import { type CookId, type EpochS, fromIso, type PitId, type YardId } from '@stokehold/domain/quantity';
import type { RunningShift } from '@stokehold/domain/shift';
import { allWrappedFrom } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import { CookingStore } from '../cooking/index.js';
import { FoodStore } from '../food/index.js';
import { Fires } from '../pits/index.js';
import { Shifts } from '../shifts/index.js';
import { type OnCart, Paces, WoodStore } from '../wood/index.js';
import { Yards } from '../yards/index.js';
import type { BurningPit, PullFacts } from './pull-facts.js';
import { ASSUMED_CLIMATE, type DryingLot, dryingLots } from './woodyard.forecast.js';
import { WoodyardStore } from './woodyard.store.js';

/** The wood of a yard and the night that burns it. */
export interface NightWood {
  readonly shift: RunningShift | undefined;
  readonly pits: readonly BurningPit[];
  readonly lots: readonly DryingLot[];
  readonly carts: readonly OnCart[];
  readonly climate: { readonly months: typeof ASSUMED_CLIMATE; readonly isAssumed: boolean };
  /** The facts of a pull; undefined while nothing burns and nothing will. */
  readonly facts: PullFacts | undefined;
}

/** Gathers what a pull, a forecast and a shopping list are made from. */
@Injectable()
export class NightWoods {
  constructor(
    private readonly store: WoodyardStore,
    private readonly wood: WoodStore,
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly fires: Fires,
    private readonly paces: Paces,
    private readonly food: FoodStore,
    private readonly cooking: CookingStore,
  ) {}

  async gather(em: EntityManager, yardId: YardId, now: EpochS): Promise<NightWood> {
    const shift = await this.shifts.running(em, yardId, now);
    const known = await this.store.climate(em, yardId);
    const climate = { months: known ?? ASSUMED_CLIMATE, isAssumed: known === undefined };
    const lots = dryingLots(await this.wood.lots(em, yardId), await this.wood.readings(em, yardId), climate, now);
    const carts = await this.wood.carts(em, yardId);
    const pits = shift ? await this.burning(em, yardId, now, shift) : [];
    const yard = await this.yards.settings(em, yardId);
    const facts = shift && pits.length > 0 && shift.until > now
      ? { now, until: shift.until, yard, pits, carts, maySaw: sawyersOf(shift, now), lots: lots.map(({ lot, seasoning }) => ({ ...lot, nowMoisture: seasoning.now.moisture })) }
      : undefined;
    return { shift, pits, lots, carts, climate, facts };
  }

  private async burning(em: EntityManager, yardId: YardId, now: EpochS, shift: RunningShift): Promise<readonly BurningPit[]> {
    const cooks = (await this.food.cooks(em, { yardId })).filter(({ offAt, lies }) => offAt === null && lies.length > 0);
    const wrapped = await this.cooking.wrappedAt(em, cooks.map(({ id }) => id));
    const stands = await this.yards.pits(em, yardId);
    const paces = await this.paces.of(em, yardId, now, { shift, pits: stands, recent: await this.fires.burnRates(em, yardId, now) });
    return shift.pits.flatMap(({ pitId, lightAt }) => {
      const pit = stands.find(({ id }) => id === pitId);
      const lying = cooks.filter(({ lies }) => lies.some((lie) => lie.pitId === pitId));
      const wrapAt = new Map(lying.map((cook) => [cook.id, wrapAtOf(cook, wrapped, now)]));
      const loadedZones = [...new Set(lying.flatMap(({ lies }) => lies.filter((lie) => lie.pitId === pitId).map(({ zone }) => zone)))];
      const pace = paces.get(pitId);
      return pit && pace ? [{ pit, lightAt, pace, loadedZones, wrappedFrom: allWrappedFrom([...wrapAt.values()]), smoked: lying.map((cook) => smokedOn(pitId, cook, wrapAt.get(cook.id) ?? shift.until)) }] : [];
    });
  }
}

/** Who is on the shift yet or still to come, is not away, and may saw. */
const sawyersOf = ({ people }: RunningShift, now: EpochS): readonly string[] => people.filter(({ skills, endsAt, presence }) => skills.includes('saw') && endsAt > now && presence !== 'away').map(({ name }) => name);

/** When a cook was wrapped, or will be by its forecast; a forecast that has passed without a wrap says nothing. */
function wrapAtOf({ id, forecast }: CookView, wrapped: ReadonlyMap<CookId, EpochS>, now: EpochS): EpochS | undefined {
  const said = forecast?.wrapAt ? fromIso(forecast.wrapAt) : undefined;
  return wrapped.get(id) ?? (said !== undefined && said > now ? said : undefined);
}

/** How much of a cook lies on a pit, and until when its smoke matters. */
function smokedOn(pitId: PitId, { weightKg, pieces, lies, mix, comesOffAt }: CookView, wrapAt: EpochS): BurningPit['smoked'][number] {
  const here = lies.filter((lie) => lie.pitId === pitId).reduce((sum, lie) => sum + lie.pieces, 0);
  return { massKg: (weightKg * here) / pieces, mix, until: comesOffAt === null ? wrapAt : (Math.min(wrapAt, fromIso(comesOffAt)) as EpochS) };
}
