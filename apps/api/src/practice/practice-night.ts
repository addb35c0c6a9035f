import type { AlarmView, CookView, PlanView, RecordReadings, TaskView } from '@stokehold/domain/contract';
import { dryBasis, type DryBasis, type EpochS, fromIso, HOUR_S, later, type LotId, MINUTE_S, type PersonId, type PitId, randomStream, seedFrom, toIso, type YardId } from '@stokehold/domain/quantity';
import { presenceAt, type RunningShift } from '@stokehold/domain/shift';
import { pieceOfSize, USUAL_SPLIT, wetMassKg } from '@stokehold/domain/wood';
import type { EntityManager } from 'typeorm';
import type { Alarms } from '../alarms/index.js';
import type { Checks } from '../checks/index.js';
import type { Cooking, CookingCuts, Watch } from '../cooking/index.js';
import type { Food } from '../food/index.js';
import type { Fires } from '../pits/index.js';
import type { Plans } from '../planning/index.js';
import type { Actor, Ids, Outbox } from '../platform/index.js';
import type { Readings } from '../readings/index.js';
import type { Shifts, Tasks } from '../shifts/index.js';
import type { WeatherNow } from '../weather/index.js';
import type { WoodStore } from '../wood/index.js';
import { CooksHeld, type CooksReport } from './cooks-held.js';
import type { PracticeDoings } from './doings.js';
import { FansHeld, type FansReport } from './fans-held.js';
import { FoodTruth, NOTE_EVERY_S } from './food-truth.js';
import { type Call, type Hand, PracticeCrew } from './hands.js';
import { NightProbes } from './night-probes.js';
import type { OpenedYard } from './open-yard.js';
import type { ProbeFault } from './probe-faults.js';
import { probesReport, type ProbesReport } from './probes-report.js';
import type { NightTruth, Sky } from './truth.js';

/** The services of the house that a practice night works through. */
export interface Through {
  readonly em: EntityManager;
  readonly outbox: Outbox;
  readonly ids: Ids;
  readonly alarms: Alarms;
  readonly checks: Checks;
  readonly cooking: Cooking;
  readonly cuts: CookingCuts;
  readonly watch: Watch;
  readonly fires: Fires;
  readonly food: Food;
  readonly plans: Plans;
  readonly readings: Readings;
  /** How readings come in: as the gateway's command, or over a broker. */
  readonly send: (gateway: Actor, command: RecordReadings) => Promise<unknown>;
  readonly shifts: Shifts;
  readonly tasks: Tasks;
  readonly weather: WeatherNow;
  readonly wood: WoodStore;
  readonly doings: PracticeDoings;
}

const WEATHER_EVERY_S = HOUR_S;
/** A wind so much other than the one told last is told within minutes: everybody in the yard feels it, m/s. */
const FELT_M_PER_S = 3;
const FEEL_EVERY_S = 5 * MINUTE_S;
/** Meat probes are read so often. */
const READ_FOOD_EVERY_S = 20 * MINUTE_S;
/** So often the fans on the wall are held against what would come; each for so long. */
const HOLD_FANS_EVERY_S = 20 * MINUTE_S;
const HOLD_FANS_S = 90 * MINUTE_S;
/** So often the done times on the screens are noted, to be held against the true ones. */
const HOLD_COOKS_EVERY_S = 30 * MINUTE_S;

/** One simulated night, minute by minute, through the real commands. Its clock stands where the last minute put it. */
export class PracticeNight {
  readonly crew: PracticeCrew;
  private readonly probes: NightProbes;
  private plan: PlanView | null | undefined;
  private tasks: readonly TaskView[] | undefined;
  private shift: RunningShift | undefined;
  private loads: ReadonlyMap<PitId, number> | undefined;
  private toldSky: Sky | undefined;
  private cooks: readonly CookView[] | undefined;
  private calls: readonly Call[] | undefined;
  private readonly food: FoodTruth;
  private readonly fans = new FansHeld();
  private readonly said = new CooksHeld();

  constructor(
    readonly yard: OpenedYard,
    readonly truth: NightTruth,
    private readonly house: Through,
    seed: number,
    /** The yard's own time; its clock in the house reads it. */
    private readonly time: { at: EpochS },
    faults: readonly ProbeFault[] = [],
  ) {
    this.probes = new NightProbes({ pits: yard.pits, truth, seed, faults, send: (readings) => house.send(yard.gateway, { key: house.ids.next(), readings: [...readings] }) });
    this.food = new FoodTruth(seed);
    const random = randomStream(seedFrom(seed, 'crew'));
    const doings = house.doings.on({ truth, pits: yard.pits, random, settle: () => this.settle(), loadings: yard.loadings });
    this.crew = new PracticeCrew(yard.hands, doings, {
      plan: async () => (this.plan ??= await house.plans.view(house.em, yard.yardId)),
      tasks: async () => (this.tasks ??= await house.tasks.view(house.em, yard.yardId, this.at)),
      calls: async () => (this.calls ??= callsOf(await house.alarms.view(house.em, yard.yardId), yard.lead)),
      isAway: (personId, now) => this.isAway(personId, now),
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
    if (this.isWeatherWorthTelling(to)) await this.sayWeather(lead);
    await this.crew.minute(to);
    await this.probes.minute(to);
    if (to % NOTE_EVERY_S === 0) await this.readFood(gateway);
    await this.house.outbox.carryOut(yardId, async (deed) => deed.tell({ kind: 'minute-passed' }));
    await this.house.watch.idle();
    if (to % HOLD_FANS_EVERY_S === 0) await this.holdFans();
    if (to % HOLD_COOKS_EVERY_S === 0) this.said.note(await this.house.food.cooks(this.house.em, yardId, to), to);
  }

  /** Carries everything told so far to all it causes. */
  async settle(): Promise<void> {
    await this.house.outbox.settle(this.yard.yardId);
    await this.house.watch.idle();
  }

  /** Whatever changed in the house is looked at anew; wood that anybody put on burns in the true fire. */
  private async hear(yardId: YardId, event: Parameters<Parameters<Outbox['listen']>[0]>[2]): Promise<void> {
    if (yardId !== this.yard.yardId) return;
    if (event.kind === 'plan-repaired') this.plan = undefined;
    if (event.kind === 'task-added' || event.kind === 'task-finished' || event.kind === 'shift-planned') this.tasks = undefined;
    if (event.kind === 'presence-reported' || event.kind === 'shift-planned') this.shift = undefined;
    if (event.kind === 'alarm-changed') this.calls = undefined;
    if (event.kind === 'cook-changed') this.loads = this.cooks = undefined;
    if (event.kind === 'check-recorded') await this.layOn(event.pitId, event.checkId);
  }

  private async isAway(personId: PersonId, now: EpochS): Promise<boolean> {
    this.shift ??= await this.house.shifts.running(this.house.em, this.yard.yardId, now);
    const person = this.shift?.people.find(({ id }) => id === personId);
    return person !== undefined && ['away', 'late'].includes(presenceAt(person, now));
  }

  private async layOn(pitId: PitId, checkId: string): Promise<void> {
    const check = await this.house.checks.one(this.house.em, this.yard.yardId, checkId);
    if (!check) return;
    const lot = (await this.house.wood.lots(this.house.em, this.yard.yardId)).find(({ id }) => id === check.lotId);
    const standard = lot ? { ...lot, moisture: this.trueMoisture(lot.id, lot.moisture) } : USUAL_SPLIT;
    const pieces = Array.from({ length: check.splits }, () => pieceOfSize(standard, check.size));
    this.truth.put(pitId, { pieces, raked: check.raked }, this.loads ?? new Map(), check.air ?? undefined);
    const by = this.crew.hands.find(({ id }) => id === check.personId);
    if (by && !by.acting) by.playedByHand = true;
  }

  private trueMoisture(lotId: LotId, recorded: DryBasis): DryBasis {
    return dryBasis(this.yard.trueMoistures.get(lotId) ?? recorded);
  }

  /** The fans as the wall shows them now, each beside its fire left alone. */
  private async holdFans(): Promise<void> {
    for (const { pitId, fire } of await this.house.fires.view(this.house.em, this.yard.yardId, this.at)) {
      const came = fire && this.truth.leaveAlone(pitId, HOLD_FANS_S);
      if (came) this.fans.note(fire.forecast, came);
    }
  }

  /** The food takes in the air of its zones; now and then its probes are read. */
  private async readFood(gateway: Actor): Promise<void> {
    const { em, food, cuts, cooking, ids } = this.house;
    this.cooks ??= await food.cooks(em, this.yard.yardId, this.at);
    if (!this.cooks.some(({ onAt }) => onAt !== null)) return;
    this.food.note(this.cooks, await cuts.of(em, this.yard.yardId), (pitId, zone) => this.truth.seen(pitId)?.zoneTempC[zone]);
    if (this.at % READ_FOOD_EVERY_S !== 0) return;
    const entries = this.food.shown(this.cooks, this.at).map(({ cookId, tempC }) => ({ kind: 'reading' as const, cookId, at: toIso(this.at), stage: 'cooking' as const, tempC }));
    if (entries.length > 0) await cooking.record(gateway, { key: ids.next(), entries });
  }

  private isWeatherWorthTelling(now: EpochS): boolean {
    const sinceS = now - this.yard.startsAt;
    if (sinceS % WEATHER_EVERY_S === MINUTE_S) return true;
    return this.toldSky !== undefined && sinceS % FEEL_EVERY_S === MINUTE_S && Math.abs(this.truth.sky().windMPerS - this.toldSky.windMPerS) >= FELT_M_PER_S;
  }

  private async sayWeather(lead: Actor): Promise<void> {
    const sky = this.truth.sky();
    this.toldSky = sky;
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
        const standard = lots.find(({ id }) => id === lotId) ?? USUAL_SPLIT;
        return sum + splits * wetMassKg(pieceOfSize(standard, size));
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
    return { yard: this.yard.name, from: toIso(startsAt), until: toIso(this.at), pits: perPit, people, ...this.fans.report(), ...this.said.report((cookId) => this.food.doneAt(cookId)), ...(await this.probesAndAlarms()) };
  }

  private async probesAndAlarms(): Promise<ProbesReport> {
    const { yardId, pits, startsAt } = this.yard;
    const told = await Promise.all(this.probes.faults.map(async (fault) => ({ fault, ...(await this.house.readings.doubted(this.house.em, fault.probeId, fault)) })));
    const called = await this.house.alarms.called(this.house.em, yardId, startsAt, this.at);
    const nameOf = (id: string) => this.crew.hands.find((hand) => hand.id === id)?.name ?? '';
    return probesReport({ pits, told, called, course: this.probes.course, from: startsAt, until: this.at, nameOf });
  }
}

/** What calls, and whom; what is over and was not taken note of is for the lead. */
function callsOf(alarms: readonly AlarmView[], lead: Actor): Call[] {
  return alarms.flatMap(({ id, state, priority, told }): Call[] => {
    const isOver = state === 'returned-unacknowledged';
    const people = isOver ? (lead.person ? [lead.person.id] : []) : (told?.people ?? []);
    return people.length > 0 ? [{ alarmId: id, people, presses: priority === 'critical' || priority === 'high', isOver }] : [];
  });
}

const tenths = (value: number) => Math.round(value * 10) / 10;

export interface NightReport extends ProbesReport, FansReport, CooksReport {
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
