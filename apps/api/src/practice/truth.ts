import type { PitSettings } from '@stokehold/domain/contract';
import { surroundingsOf } from '@stokehold/domain/chamber';
import { type AirSet, airOf, gradeOf, igniteTruth, type PitTruth, stepTruth, type TruthSeen, type WoodOn } from '@stokehold/domain/fire';
import { type EpochS, HOUR_S, later, MINUTE_S, type PitId, randomStream, type RandomStream, seedFrom } from '@stokehold/domain/quantity';
import { shapeOf } from '../pits/index.js';
import { nextWallTime } from '../platform/index.js';
import type { LeftAlone } from './fans-held.js';
import type { SampleNight } from './sample.js';

/** What the sky does at an instant. */
export interface Sky {
  readonly windMPerS: number;
  readonly gustMPerS: number;
  readonly fromDeg: number;
  readonly ambientTempC: number;
  readonly rainFrac: number;
}

interface TruePit {
  readonly pit: PitSettings;
  readonly random: RandomStream;
  fire: PitTruth | undefined;
  /** How hands left its air; undefined as in everyday firing. */
  air: AirSet | undefined;
  /** Whether there is no bed now: so before the kindling has made one. */
  lost: boolean;
  bedsLost: number;
  inBandS: number;
  burningS: number;
}

/** A copy of a fire that nobody touches, until a time. */
interface LonelyFire {
  readonly of: TruePit;
  /** How its air stood when it was left. */
  readonly air: AirSet | undefined;
  fire: PitTruth;
  readonly until: EpochS;
  readonly tempC: Map<EpochS, number>;
}

/** A fire in start-up is not held against its band: from lighting until its chamber could be hot. */
const WARM_UP_S = 90 * MINUTE_S;

/**
 * What the fires and the sky really do on a practice night. Nobody else in the house looks in here: the estimator sees only
 * what probes read and crews report.
 */
export class NightTruth {
  private readonly pits: Map<PitId, TruePit>;
  private readonly random: RandomStream;
  private readonly gusts: readonly { from: EpochS; until: EpochS; windMPerS: number; fromDeg: number }[];
  private lonely: readonly LonelyFire[] = [];
  private drift = 0;
  private at: EpochS;

  constructor(
    private readonly night: SampleNight,
    pits: readonly PitSettings[],
    private readonly startsAt: EpochS,
    seed: number,
  ) {
    this.at = startsAt;
    this.random = randomStream(seedFrom(seed, 'sky'));
    this.pits = new Map(
      pits.map((pit) => [
        pit.id,
        { pit, random: randomStream(seedFrom(seed, 'pit', pit.name)), fire: undefined, air: undefined, lost: true, bedsLost: 0, inBandS: 0, burningS: 0 },
      ]),
    );
    const hourBefore = later(startsAt, -HOUR_S);
    this.gusts = night.truth.gusts.map(({ at, minutes, windMPerS, fromDeg }) => {
      const from = nextWallTime(hourBefore, at, night.yard.timeZone);
      return { from, until: later(from, minutes * MINUTE_S), windMPerS, fromDeg };
    });
  }

  sky(): Sky {
    const { truth } = this.night;
    const gust = this.gusts.find(({ from, until }) => from <= this.at && this.at < until);
    const windMPerS = Math.max(0, (gust?.windMPerS ?? truth.windMPerS) + this.drift);
    return {
      windMPerS,
      gustMPerS: windMPerS * 1.6,
      fromDeg: gust?.fromDeg ?? truth.windFromDeg,
      ambientTempC: truth.ambientTempC - (truth.coolingCPerHour * (this.at - this.startsAt)) / HOUR_S,
      rainFrac: 0,
    };
  }

  light(pitId: PitId): void {
    const one = this.one(pitId);
    one.fire = igniteTruth({ shape: shapeOf(one.pit), at: this.at, ambientTempC: this.sky().ambientTempC, random: one.random, spread: this.night.truth.spread });
  }

  isLit(pitId: PitId): boolean {
    return this.one(pitId).fire !== undefined;
  }

  /** Lets everything burn until `to`, with the food that lies on each pit. */
  carry(to: EpochS, loads: ReadonlyMap<PitId, number>): void {
    this.drift += (-this.drift * (to - this.at)) / (10 * MINUTE_S) + 0.35 * Math.sqrt((to - this.at) / MINUTE_S) * this.random.normal();
    const sky = this.sky();
    for (const one of this.pits.values()) {
      if (!one.fire) continue;
      one.fire = stepTruth(one.fire, { ...this.around(one, sky, loads), to });
      this.count(one, to - this.at);
    }
    this.carryLonely(sky, loads, to);
    this.at = to;
  }

  /**
   * What this fire would do under the same sky if nobody touched it from now on: a course that fills in as the night is carried, for so
   * long. Undefined while the fire does not burn, or is still held against nothing.
   */
  leaveAlone(pitId: PitId, forS: number): LeftAlone | undefined {
    const of = this.one(pitId);
    if (!of.fire || of.burningS <= WARM_UP_S) return undefined;
    const tempC = new Map<EpochS, number>();
    this.lonely = [...this.lonely, { of, air: of.air, fire: of.fire, until: later(this.at, forS), tempC }];
    return tempC;
  }

  /** Wood laid on a fire now, by whoever stands there, and how they left its air; left out, the air stays as it was. */
  put(pitId: PitId, on: WoodOn, loads: ReadonlyMap<PitId, number>, air?: AirSet): void {
    const one = this.one(pitId);
    one.air = air ?? one.air;
    if (one.fire) one.fire = stepTruth(one.fire, { ...this.around(one, this.sky(), loads), to: this.at }, on);
  }

  /** What somebody who looks at this fire sees; undefined when it does not burn. */
  seen(pitId: PitId): TruthSeen | undefined {
    const { fire } = this.one(pitId);
    return fire && gradeOf(fire);
  }

  /** What the night came to, per pit. */
  sums(pitId: PitId): { readonly minutesInBand: number; readonly minutesBurning: number; readonly bedsLost: number } {
    const { inBandS, burningS, bedsLost } = this.one(pitId);
    return { minutesInBand: Math.round(inBandS / MINUTE_S), minutesBurning: Math.round(burningS / MINUTE_S), bedsLost };
  }

  private carryLonely(sky: Sky, loads: ReadonlyMap<PitId, number>, to: EpochS): void {
    this.lonely = this.lonely.filter(({ until }) => to <= until);
    for (const one of this.lonely) {
      one.fire = stepTruth(one.fire, { ...this.around({ pit: one.of.pit, air: one.air }, sky, loads), to });
      one.tempC.set(to, gradeOf(one.fire).chamberTempC);
    }
  }

  private count(one: TruePit, spanS: number): void {
    if (!one.fire) return;
    const { chamberTempC, bedLost } = gradeOf(one.fire);
    const band = one.pit.band;
    if (bedLost && !one.lost) one.bedsLost += 1;
    one.lost = bedLost;
    one.burningS += spanS;
    if (one.burningS > WARM_UP_S && chamberTempC >= band.lowC && chamberTempC <= band.highC) one.inBandS += spanS;
  }

  private around({ pit, air }: Pick<TruePit, 'pit' | 'air'>, sky: Sky, loads: ReadonlyMap<PitId, number>) {
    const around = surroundingsOf({ ...sky, fireEndDeg: pit.fireEndHeadingDeg, foodLoadFrac: loads.get(pit.id) ?? 0 });
    return air ? { ...around, air: airOf(air) } : around;
  }

  private one(pitId: PitId): TruePit {
    const one = this.pits.get(pitId);
    if (!one) throw new Error(`pit ${pitId} does not stand in this practice yard`);
    return one;
  }
}
