import type { PitSettings, PlanView, TaskView } from '@stokehold/domain/contract';
import { dryBasis, type DryBasis, type EpochS, fromIso, HOUR_S, later, type LotId, MINUTE_S, type PitId, randomStream, type RandomStream, seedFrom, toIso, type YardId } from '@stokehold/domain/quantity';
import { pieceOfSize, wetMassKg } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import type { Checks } from '../checks/index.js';
import type { Food } from '../food/index.js';
import type { Plans } from '../planning/index.js';
import type { Actor, Deeds, Ids, Outbox } from '../platform/index.js';
import type { Readings } from '../readings/index.js';
import type { Tasks } from '../shifts/index.js';
import type { WeatherNow } from '../weather/index.js';
import type { WoodStore } from '../wood/index.js';
import type { PracticeDoings } from './doings.js';
import { type Hand, PracticeCrew } from './hands.js';
import type { OpenedYard } from './open-yard.js';
import type { NightTruth } from './truth.js';

/** The services of the house that a practice night works through. */
export interface Through {
  readonly em: EntityManager;
  readonly deeds: Deeds;
  readonly outbox: Outbox;
  readonly ids: Ids;
  readonly checks: Checks;
  readonly food: Food;
  readonly plans: Plans;
  readonly readings: Readings;
  readonly tasks: Tasks;
  readonly weather: WeatherNow;
  readonly wood: WoodStore;
  readonly doings: PracticeDoings;
}

const READ_EVERY_S = 2 * MINUTE_S;
const WEATHER_EVERY_S = HOUR_S;
/** A probe's noise and its lasting error, K. */
const PROBE_SD_K = 0.8;
const PROBE_BIAS_SD_K = 1;

/** One simulated night, minute by minute, through the real commands. Its clock stands where the last minute put it. */
export class PracticeNight {
  readonly crew: PracticeCrew;
  private readonly biases: ReadonlyMap<string, number>;
  private readonly noise: RandomStream;
  private plan: PlanView | null | undefined;
  private tasks: readonly TaskView[] | undefined;
  private loads: ReadonlyMap<PitId, number> | undefined;

  constructor(
    readonly yard: OpenedYard,
    readonly truth: NightTruth,
    private readonly house: Through,
    seed: number,
    /** The yard's own time; its clock in the house reads it. */
    private readonly time: { at: EpochS },
  ) {
    this.noise = randomStream(seedFrom(seed, 'probes'));
    this.biases = new Map(yard.pits.flatMap(({ probes }) => probes.map(({ id }) => [id, PROBE_BIAS_SD_K * this.noise.normal()])));
    const random = randomStream(seedFrom(seed, 'crew'));
    const doings = house.doings.on({ truth, pits: yard.pits, random, settle: () => this.settle(), loadings: yard.loadings });
    this.crew = new PracticeCrew(yard.hands, doings, {
      plan: async () => (this.plan ??= await house.plans.view(house.em, yard.yardId)),
      tasks: async () => (this.tasks ??= await house.tasks.view(house.em, yard.yardId, this.at)),
      walkS: (from, to) => yard.walkS(from, to),
    }, random);
    house.outbox.listen((yardId, _, event) => this.hear(yardId, event));
  }

  get at(): EpochS {
    return this.time.at;
  }

  get isOver(): boolean {
    return this.at >= this.yard.endsAt;
  }

  /** Lets one minute pass: the fires burn, the crew moves, probes read, the house reckons. */
  async minute(): Promise<void> {
    const { yardId, lead, gateway } = this.yard;
    const to = later(this.at, MINUTE_S);
    this.loads ??= await this.house.food.loads(this.house.em, yardId);
    this.truth.carry(to, this.loads);
    this.time.at = to;
    if ((to - this.yard.startsAt) % WEATHER_EVERY_S === MINUTE_S) await this.sayWeather(lead);
    await this.crew.minute(to);
    if (to % READ_EVERY_S === 0) await this.read(gateway);
    await this.house.deeds.run(yardId, async (deed) => deed.tell({ kind: 'minute-passed' }));
    await this.settle();
  }

  /** Carries everything told so far to all it causes. */
  async settle(): Promise<void> {
    await this.house.outbox.drain(this.yard.yardId);
  }

  /** Whatever changed in the house is looked at anew; wood that anybody put on burns in the true fire. */
  private async hear(yardId: YardId, event: Parameters<Parameters<Outbox['listen']>[0]>[2]): Promise<void> {
    if (yardId !== this.yard.yardId) return;
    if (event.kind === 'plan-repaired') this.plan = undefined;
    if (event.kind === 'task-added' || event.kind === 'task-finished' || event.kind === 'shift-planned') this.tasks = undefined;
    if (event.kind === 'cook-changed') this.loads = undefined;
    if (event.kind === 'check-recorded') await this.layOn(event.pitId, event.checkId);
  }

  private async layOn(pitId: PitId, checkId: string): Promise<void> {
    const checks = await this.house.checks.recent(this.house.em, this.yard.yardId, later(this.at, -HOUR_S));
    const check = checks.find(({ id }) => id === checkId);
    if (!check) return;
    const lots = await this.house.wood.lots(this.house.em, this.yard.yardId);
    const lot = lots.find(({ id }) => id === check.lotId);
    const pieces = lot ? Array.from({ length: check.splits }, () => ({ ...pieceOfSize(lot, check.size), moisture: this.trueMoisture(lot.id, lot.moisture) })) : [];
    this.truth.put(pitId, { pieces, raked: check.raked }, this.loads ?? new Map());
    const by = this.crew.hands.find(({ id }) => id === check.personId);
    if (by && !by.acting) by.playedByHand = true;
  }

  private trueMoisture(lotId: LotId, recorded: DryBasis): DryBasis {
    return dryBasis(this.yard.trueMoistures.get(lotId) ?? recorded);
  }

  private async read(gateway: Actor): Promise<void> {
    const readings = this.yard.pits.flatMap((pit) => {
      const seen = this.truth.seen(pit.id);
      return seen ? pit.probes.map((probe) => ({ probeId: probe.id, takenAt: toIso(this.at), tempC: this.shown(pit, probe, seen.zoneTempC) })) : [];
    });
    if (readings.length === 0) return;
    await this.house.readings.record(gateway, { key: this.house.ids.next(), readings });
    await this.settle();
  }

  private shown(pit: PitSettings, probe: PitSettings['probes'][number], zoneTempC: readonly number[]): number {
    const tempC = zoneTempC[Math.min(probe.zone, pit.zones.length - 1)] ?? 0;
    return Math.round((tempC + (this.biases.get(probe.id) ?? 0) + PROBE_SD_K * this.noise.normal()) * 10) / 10;
  }

  private async sayWeather(lead: Actor): Promise<void> {
    const sky = this.truth.sky();
    const rounded = (value: number, step: number) => Math.round(value / step) * step;
    await this.house.weather.record(lead, {
      key: this.house.ids.next(),
      seenAt: toIso(this.at),
      windMPerS: rounded(sky.windMPerS, 0.5),
      gustMPerS: rounded(sky.gustMPerS, 0.5),
      fromDeg: rounded(sky.fromDeg, 15) % 360,
      ambientTempC: rounded(sky.ambientTempC, 0.5),
      rainFrac: 0,
    });
    await this.settle();
  }

  /** What the night came to. Same file and seed: the same figures, to the last digit. */
  async report(): Promise<NightReport> {
    const { yardId, pits, startsAt } = this.yard;
    const checks = await this.house.checks.recent(this.house.em, yardId, startsAt);
    const lots = await this.house.wood.lots(this.house.em, yardId);
    const perPit = pits.map((pit) => {
      const own = checks.filter(({ pitId }) => pitId === pit.id);
      const late = own.flatMap(({ seenAt, wasDueAt }) => (wasDueAt ? [Math.max(0, fromIso(seenAt) - fromIso(wasDueAt))] : []));
      const massKg = own.reduce((sum, { lotId, splits, size }) => {
        const lot = lots.find(({ id }) => id === lotId);
        return sum + (lot ? splits * wetMassKg(pieceOfSize(lot, size)) : 0);
      }, 0);
      return {
        pit: pit.name,
        ...this.truth.sums(pit.id),
        checks: own.length,
        meanLateMinutes: tenths(late.reduce((sum, one) => sum + one, 0) / Math.max(1, late.length) / MINUTE_S),
        mostLateMinutes: tenths(Math.max(0, ...late) / MINUTE_S),
        splits: own.reduce((sum, { splits }) => sum + splits, 0),
        woodKg: tenths(massKg),
      };
    });
    const people = this.crew.hands.map((hand: Hand) => ({
      person: hand.name,
      minutesWorked: Math.round(hand.workedS / MINUTE_S),
      minutesWalked: Math.round(hand.walkedS / MINUTE_S),
      breaksKept: hand.breaksBegun.size,
      breaksDue: this.yard.breaksOf(hand.id),
    }));
    return { yard: this.yard.name, from: toIso(startsAt), until: toIso(this.at), pits: perPit, people };
  }
}

const tenths = (value: number) => Math.round(value * 10) / 10;

export interface NightReport {
  readonly yard: string;
  readonly from: string;
  readonly until: string;
  readonly pits: readonly {
    readonly pit: string; readonly minutesInBand: number; readonly minutesBurning: number; readonly bedsLost: number; readonly checks: number;
    readonly meanLateMinutes: number; readonly mostLateMinutes: number; readonly splits: number; readonly woodKg: number;
  }[];
  readonly people: readonly {
    readonly person: string; readonly minutesWorked: number; readonly minutesWalked: number; readonly breaksKept: number; readonly breaksDue: number;
  }[];
}
