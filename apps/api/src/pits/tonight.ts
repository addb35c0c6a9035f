import { Injectable } from '@nestjs/common';
import { surroundingsOf } from '@stokehold/domain/chamber';
import type { PitSettings } from '@stokehold/domain/contract';
import type { Band, PitShape, Surroundings } from '@stokehold/domain/fire';
import type { EpochS, PitId, YardId } from '@stokehold/domain/quantity';
import type { EntityManager } from 'typeorm';
import { Food } from '../food/index.js';
import { Shifts } from '../shifts/index.js';
import { WeatherNow } from '../weather/index.js';
import { Yards } from '../yards/index.js';

/** A pit that burns in the running shift, with what its fire has around it. */
export interface PitTonight {
  readonly id: PitId;
  readonly name: string;
  readonly shape: PitShape;
  readonly band: Band;
  readonly lightAt: EpochS;
  readonly around: Surroundings;
}

/** The shape of a pit as the fire model takes it. */
export const shapeOf = (pit: PitSettings): PitShape => ({
  chamberLengthM: pit.chamberLengthM,
  chamberDiameterM: pit.chamberDiameterM,
  fireboxLengthM: pit.fireboxLengthM,
  fireboxDiameterM: pit.fireboxDiameterM,
  steelThicknessM: pit.steelThicknessM,
  stackHeightM: pit.stackHeightM,
  stackDiameterM: pit.stackDiameterM,
  zones: pit.zones.length,
});

/** Which pits burn tonight, in this weather, with this food on them. */
@Injectable()
export class Tonight {
  constructor(
    private readonly yards: Yards,
    private readonly shifts: Shifts,
    private readonly weather: WeatherNow,
    private readonly food: Food,
  ) {}

  /** In the order of the yard's pits; empty when no shift runs. */
  async pits(em: EntityManager, yardId: YardId, now: EpochS): Promise<PitTonight[]> {
    const [shift, pits, weather, loads] = await Promise.all([
      this.shifts.running(em, yardId, now), this.yards.pits(em, yardId), this.weather.believed(em, yardId, now), this.food.loads(em, yardId),
    ]);
    if (!shift || shift.pits.length === 0) return [];
    return pits.flatMap((pit) => {
      const burning = shift.pits.find(({ pitId }) => pitId === pit.id);
      if (!burning) return [];
      const around = surroundingsOf({ ...weather, fireEndDeg: pit.fireEndHeadingDeg, foodLoadFrac: loads.get(pit.id) ?? 0 });
      return [{ id: pit.id, name: pit.name, shape: shapeOf(pit), band: burning.band, lightAt: burning.lightAt, around }];
    });
  }
}
