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
import { type OpenedYard, PracticeYards } from './open-yard.js';
import { GatewayOverBroker } from './over-broker.js';
import { drawFaults } from './probe-faults.js';
import { PracticeNight, type Through } from './practice-night.js';
import type { SampleNight } from './sample.js';
import { NightTruth } from './truth.js';

/** What a night that nobody watches may have: probes that fail, and a broker between them and the house, which listens there already. */
interface StillNight {
  readonly faultyProbes?: boolean | undefined;
  readonly broker?: string | undefined;
}

/** Opens practice nights and, for those that are watched, lets their minutes pass. */
@Injectable()
export class PracticeNights implements BeforeApplicationShutdown {
  private readonly through: Through;
  private overBroker: GatewayOverBroker | undefined;
  private timer: NodeJS.Timeout | undefined;
  private underWay: Promise<void> = Promise.resolve();

  constructor(
    database: DataSource, outbox: Outbox, alarms: Alarms, checks: Checks, cooking: Cooking, cuts: CookingCuts, watch: Watch, fires: Fires, food: Food, plans: Plans, readings: Readings, shifts: Shifts, tasks: Tasks,
    weather: WeatherNow, wood: WoodStore, doings: PracticeDoings, private readonly ids: Ids, private readonly yards: PracticeYards,
  ) {
    this.through = { em: database.manager, outbox, ids, alarms, checks, cooking, cuts, watch, fires, food, plans, readings, send: (gateway, command) => readings.record(gateway, command), shifts, tasks, weather, wood, doings };
  }

  /** A night whose minutes the caller lets pass, each as soon as the one before is done. Everything in it follows from the seed. */
  async openStill(sample: SampleNight, seed: number, { faultyProbes = false, broker }: StillNight = {}): Promise<PracticeNight> {
    this.ids.fromNowOnBy(randomStream(seedFrom(seed, 'ids')));
    return this.open(sample, { seed, faultyProbes, broker }, (night) => ({ now: () => night.at, speed: 1 }));
  }

  /** A night that is watched: its first `skipS` pass at once, the rest at `speed` times the pace of a clock. */
  async openLive(sample: SampleNight, options: { readonly seed: number; readonly speed: number; readonly skipS: number }): Promise<PracticeNight> {
    await this.yards.forgetOthers();
    let minuteBegan = Date.now();
    const night = await this.open(sample, { seed: options.seed }, (opened) => ({
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
    await this.overBroker?.close();
  }

  private again(pass: () => void, night: PracticeNight, waitMs: number): void {
    if (!night.isOver) this.timer = setTimeout(pass, waitMs);
  }

  private async open(sample: SampleNight, { seed, faultyProbes = false, broker }: StillNight & { readonly seed: number }, timeOf: (night: { readonly at: EpochS }) => { now: () => EpochS; speed: number }): Promise<PracticeNight> {
    const clock: { at: EpochS } = { at: epochS(0) };
    const yard = await this.yards.open(sample, (startsAt) => {
      clock.at = startsAt;
      return timeOf(clock);
    });
    const faults = faultyProbes ? drawFaults(yard.pits, { from: yard.startsAt, until: yard.endsAt }, seed) : [];
    const through = broker ? await this.throughBroker(broker, yard) : this.through;
    const night = new PracticeNight(yard, new NightTruth(sample, yard.pits, yard.startsAt, seed), through, seed, clock, faults);
    await night.settle();
    return night;
  }

  private async throughBroker(url: string, { yardId, gateway, gatewayToken }: OpenedYard): Promise<Through> {
    const kept = async (key: string) => ((await this.through.em.query('select 1 from command_key where yard_id = $1 and key = $2', [yardId, key])) as unknown[]).length > 0;
    const overBroker = await GatewayOverBroker.open(url, { yardId, deviceId: gateway.device.id, token: gatewayToken }, kept);
    this.overBroker = overBroker;
    return { ...this.through, send: (_, command) => overBroker.send(command) };
  }
}
