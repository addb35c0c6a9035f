import { type BeforeApplicationShutdown, Injectable } from '@nestjs/common';
import { type EpochS, epochS, MINUTE_S, randomStream, seedFrom } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { Alarms } from '../alarms/index.js';
import { Checks } from '../checks/index.js';
import { Cooking, CookingCuts, Watch } from '../cooking/index.js';
import { Food } from '../food/index.js';
import { Fires } from '../pits/index.js';
import { Plans } from '../planning/index.js';
import { Ids, log, Outbox } from '../platform/index.js';
import { Readings } from '../readings/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { WeatherNow } from '../weather/index.js';
import { WoodStore } from '../wood/index.js';
import { PracticeDoings } from './doings.js';
import { PracticeYards } from './open-yard.js';
import { drawFaults } from './probe-faults.js';
import { PracticeNight, type Through } from './practice-night.js';
import type { SampleNight } from './sample.js';
import { NightTruth } from './truth.js';

/** Opens practice nights and, for those that are watched, lets their minutes pass. */
@Injectable()
export class PracticeNights implements BeforeApplicationShutdown {
  private readonly through: Through;
  private timer: NodeJS.Timeout | undefined;
  private underWay: Promise<void> = Promise.resolve();

  constructor(
    database: DataSource, outbox: Outbox, alarms: Alarms, checks: Checks, cooking: Cooking, cuts: CookingCuts, watch: Watch, fires: Fires, food: Food, plans: Plans, readings: Readings, shifts: Shifts, tasks: Tasks,
    weather: WeatherNow, wood: WoodStore, doings: PracticeDoings, private readonly ids: Ids, private readonly yards: PracticeYards,
  ) {
    this.through = { em: database.manager, outbox, ids, alarms, checks, cooking, cuts, watch, fires, food, plans, readings, shifts, tasks, weather, wood, doings };
  }

  /** A night whose minutes the caller lets pass, each as soon as the one before is done. Everything in it follows from the seed. */
  async openStill(sample: SampleNight, seed: number, { faultyProbes = false } = {}): Promise<PracticeNight> {
    this.ids.fromNowOnBy(randomStream(seedFrom(seed, 'ids')));
    return this.open(sample, { seed, faultyProbes }, (night) => ({ now: () => night.at, speed: 1 }));
  }

  /** A night that is watched: its first `skipS` pass at once, the rest at `speed` times the pace of a clock. */
  async openLive(sample: SampleNight, options: { readonly seed: number; readonly speed: number; readonly skipS: number }): Promise<PracticeNight> {
    await this.yards.forgetOthers();
    let minuteBegan = Date.now();
    const night = await this.open(sample, { seed: options.seed, faultyProbes: false }, (opened) => ({
      now: () => epochS(opened.at + Math.min(MINUTE_S - 1, ((Date.now() - minuteBegan) / 1000) * options.speed)),
      speed: options.speed,
    }));
    while (!night.isOver && night.at < night.yard.startsAt + options.skipS) await night.minute();
    const pass = () => {
      minuteBegan = Date.now();
      this.underWay = night.minute().catch((error: unknown) => log.error({ err: error }, 'a minute of the practice night broke'));
      void this.underWay.then(() => this.again(pass, night, Math.max(0, (MINUTE_S * 1000) / options.speed - (Date.now() - minuteBegan))));
    };
    pass();
    return night;
  }

  async beforeApplicationShutdown(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    await this.underWay;
  }

  private again(pass: () => void, night: PracticeNight, waitMs: number): void {
    if (!night.isOver) this.timer = setTimeout(pass, waitMs);
  }

  private async open(sample: SampleNight, { seed, faultyProbes }: { readonly seed: number; readonly faultyProbes: boolean }, timeOf: (night: { readonly at: EpochS }) => { now: () => EpochS; speed: number }): Promise<PracticeNight> {
    const clock: { at: EpochS } = { at: epochS(0) };
    const yard = await this.yards.open(sample, (startsAt) => {
      clock.at = startsAt;
      return timeOf(clock);
    });
    const night = new PracticeNight(yard, new NightTruth(sample, yard.pits, yard.startsAt, seed), this.through, seed, clock, faultyProbes ? drawFaults(yard.pits, { from: yard.startsAt, until: yard.endsAt }, seed) : []);
    await night.settle();
    return night;
  }
}
