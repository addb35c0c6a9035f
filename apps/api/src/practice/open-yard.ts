import { Injectable } from '@nestjs/common';
import type { PitSettings } from '@stokehold/domain/contract';
import {
  type Cents, cents, type CookId, dryBasis, type EpochS, HOUR_S, later, type LotId, MINUTE_S, type PersonId, type PitId, type ProbeId, type ServiceId,
  type ShiftId, type TaskId, toIso, type YardId,
} from '@stokehold/domain/quantity';
import { walkTableS } from '@stokehold/domain/shift';
import { DataSource } from 'typeorm';
import { Food } from '../food/index.js';
import { Enrolment } from '../identity/index.js';
import { type Actor, Clock, Deeds, Ids, nextWallTime, Outbox, wallTime } from '../platform/index.js';
import { Shifts, Tasks } from '../shifts/index.js';
import { Wood } from '../wood/index.js';
import { Pulls } from '../woodyard/index.js';
import { Crew, Yards } from '../yards/index.js';
import type { Loading } from './doings.js';
import type { Hand, Place } from './hands.js';
import type { SampleNight } from './sample.js';

const DAY_S = 24 * HOUR_S;
/** A task of loading or unloading: from a little before its time to half an hour after. */
const LOAD_S = 8 * MINUTE_S;

/** A practice yard as it was set up from its file. */
export interface OpenedYard {
  readonly yardId: YardId;
  readonly name: string;
  readonly startsAt: EpochS;
  readonly endsAt: EpochS;
  readonly pits: readonly PitSettings[];
  readonly hands: readonly Hand[];
  readonly lead: Actor;
  readonly gateway: Actor;
  /** What the gateway signs with. */
  readonly gatewayToken: string;
  readonly loadings: ReadonlyMap<TaskId, Loading>;
  readonly trueMoistures: ReadonlyMap<LotId, number>;
  walkS(from: Place, to: Place): number;
  breaksOf(personId: PersonId): number;
}

/** Sets a practice yard up from a sample file, through the commands that a manager would send. */
@Injectable()
export class PracticeYards {
  constructor(
    private readonly database: DataSource,
    private readonly deeds: Deeds,
    private readonly clock: Clock,
    private readonly ids: Ids,
    private readonly enrolment: Enrolment,
    private readonly yards: Yards,
    private readonly crew: Crew,
    private readonly wood: Wood,
    private readonly food: Food,
    private readonly shifts: Shifts,
    private readonly tasks: Tasks,
    private readonly pulls: Pulls,
    private readonly outbox: Outbox,
  ) {}

  /** A practice night that is over, or whose house was killed, has no clock any more: its yard goes. */
  forgetOthers(): Promise<void> {
    return this.yards.forgetPractice(this.database.manager);
  }

  async open(sample: SampleNight, ownTime: (startsAt: EpochS) => { now: () => EpochS; speed: number }): Promise<OpenedYard> {
    const yardId = this.ids.next<YardId>();
    const { timeZone } = sample.yard;
    const startsAt = wallTime(sample.shift.date, sample.shift.from, timeZone);
    const wallAt = (time: string) => nextWallTime(later(startsAt, -HOUR_S), time, timeZone);
    this.clock.giveOwnTime(yardId, ownTime(startsAt));
    await this.yards.create(this.database.manager, { id: yardId, settings: sample.yard, practice: true });
    const { hands, lead, gateway, gatewayToken } = await this.people(sample, yardId, wallAt);
    const pits = await this.pits(sample, lead);
    const lots = await this.lots(sample, lead, pits, startsAt);
    const endsAt = wallAt(sample.shift.to);
    await this.night(sample, lead, { pits, hands, startsAt, endsAt, wallAt });
    const loadings = await this.cooks(sample, lead, pits, wallAt, endsAt);
    await this.done(lead, this.pulls.make(lead, { key: this.ids.next() }));
    const places = [...pits, sample.yard.woodPlace];
    const table = walkTableS(places, sample.yard.walkSpeedMPerS);
    const rowOf = (place: Place) => (place === 'wood' ? pits.length : pits.findIndex(({ id }) => id === place));
    return {
      yardId, name: sample.yard.name, startsAt, endsAt, pits, hands, lead, gateway, gatewayToken, loadings, trueMoistures: lots,
      walkS: (from, to) => table[rowOf(from)]?.[rowOf(to)] ?? 0,
      breaksOf: (personId) => sample.people.find(({ name }) => name === hands.find(({ id }) => id === personId)?.name)?.breaks.length ?? 0,
    };
  }

  private async people(sample: SampleNight, yardId: YardId, wallAt: (time: string) => EpochS) {
    const em = this.database.manager;
    const held = await this.enrolment.addDevice(em, { yardId, kind: 'hand', name: 'Practice crew' });
    const sending = await this.enrolment.addDevice(em, { yardId, kind: 'gateway', name: 'Practice probes' });
    const device: Actor['device'] = { id: held.deviceId, kind: 'hand', name: 'Practice crew' };
    const hands: Hand[] = [];
    for (const { name, role, language, skills, rateCentsPerHour, from, to } of sample.people) {
      const id = this.ids.next<PersonId>();
      await this.deeds.run(yardId, (deed) => this.crew.keep(deed, { id, name, role, language, skills, rateCentsPerHour: cents(rateCentsPerHour), left: false }));
      const lateS = sample.truth.late?.person === name ? sample.truth.late.minutes * MINUTE_S : 0;
      hands.push({
        actor: { yardId, device, person: { id, name, role, language } }, id, name, comesAt: later(wallAt(from), lateS), goesAt: wallAt(to),
        place: 'wood', busyUntil: 0 as EpochS, errand: undefined, workedS: 0, walkedS: 0, breaksBegun: new Set(), restsUntil: 0 as EpochS, hears: new Map(), acting: false, playedByHand: false,
      });
    }
    const lead = hands.find(({ actor }) => actor.person?.role !== 'crew')?.actor;
    if (!lead) throw new Error('The sample needs a lead or a manager among its people.');
    return { hands, lead, gateway: { yardId, device: { id: sending.deviceId, kind: 'gateway' as const, name: 'Practice probes' } }, gatewayToken: sending.token };
  }

  /** What a command caused is there before the next one, so that the same file gives the same night. */
  private async done(lead: Actor, command: Promise<unknown>): Promise<void> {
    await command;
    await this.outbox.settle(lead.yardId);
  }

  private async pits(sample: SampleNight, lead: Actor): Promise<PitSettings[]> {
    const pits: PitSettings[] = sample.pits.map(({ lightAt: _lightAt, zoneLengthsM, ...shape }) => ({
      ...shape,
      id: this.ids.next<PitId>(),
      zones: zoneLengthsM.map((lengthM) => ({ lengthM })),
      probes: [
        { id: this.ids.next<ProbeId>(), name: 'fire end', zone: 0 },
        { id: this.ids.next<ProbeId>(), name: 'stack end', zone: zoneLengthsM.length - 1 },
      ],
      retired: false,
    }));
    for (const pit of pits) await this.done(lead, this.yards.savePit(lead, { key: this.ids.next(), pit }));
    return pits;
  }

  /** Buys the lots and loads the first carts; gives what the wet ones really hold. */
  private async lots(sample: SampleNight, lead: Actor, pits: readonly PitSettings[], startsAt: EpochS): Promise<ReadonlyMap<LotId, number>> {
    const idOf = new Map<string, LotId>();
    const wet = new Map<LotId, number>();
    for (const { pieces, boughtDaysAgo, trueMoisture, priceCents, moisture, ...lot } of sample.lots) {
      const id = this.ids.next<LotId>();
      idOf.set(lot.name, id);
      if (trueMoisture !== undefined) wet.set(id, trueMoisture);
      const boughtAt = toIso(later(startsAt, -boughtDaysAgo * DAY_S));
      await this.done(lead, this.wood.buy(lead, { key: this.ids.next(), lot: { ...lot, id, moisture: dryBasis(moisture), priceCents: priceCents as Cents, boughtAt }, pieces }));
    }
    for (const { pit, lot, pieces } of sample.carts) {
      await this.done(lead, this.wood.move(lead, { key: this.ids.next(), lotId: named(idOf, lot), pitId: pitNamed(pits, pit), pieces, way: 'pull' }));
    }
    return wet;
  }

  private async night(sample: SampleNight, lead: Actor, night: { pits: readonly PitSettings[]; hands: readonly Hand[]; startsAt: EpochS; endsAt: EpochS; wallAt: (time: string) => EpochS }): Promise<void> {
    const { pits, hands, startsAt, endsAt, wallAt } = night;
    await this.done(lead, this.shifts.plan(lead, {
      key: this.ids.next(),
      id: this.ids.next<ShiftId>(),
      startsAt: toIso(startsAt),
      endsAt: toIso(endsAt),
      people: sample.people.map(({ name, from, to, breaks }) => ({
        personId: hands.find((hand) => hand.name === name)!.id,
        startsAt: toIso(wallAt(from)),
        endsAt: toIso(wallAt(to)),
        breaks: breaks.map(({ lengthMin, earliest, latest }) => ({
          id: this.ids.next(), lengthS: lengthMin * MINUTE_S, earliestAt: toIso(wallAt(earliest)), latestAt: toIso(wallAt(latest)),
        })),
      })),
      pits: sample.pits.map(({ name, band, lightAt }) => ({ pitId: pitNamed(pits, name), band, lightAt: toIso(wallAt(lightAt)) })),
    }));
  }

  /** Services and cooks, with the tasks of loading and unloading them. */
  private async cooks(sample: SampleNight, lead: Actor, pits: readonly PitSettings[], wallAt: (time: string) => EpochS, endsAt: EpochS): Promise<ReadonlyMap<TaskId, Loading>> {
    const services = new Map<string, ServiceId>();
    for (const { name, readyBy, portions } of sample.services) {
      const id = this.ids.next<ServiceId>();
      services.set(name, id);
      await this.done(lead, this.food.saveService(lead, { key: this.ids.next(), service: { id, name, readyBy: toIso(nextWallTime(endsAt, readyBy, sample.yard.timeZone)), portions } }));
    }
    const loadings = new Map<TaskId, Loading>();
    for (const { service, onAt, comesOffAt, lies, ...cook } of sample.cooks) {
      const id = this.ids.next<CookId>();
      const loading: Loading = { cookId: id, lies: lies.map(({ pit, zone, pieces }) => ({ pitId: pitNamed(pits, pit), zone, pieces })) };
      await this.done(lead, this.food.saveCook(lead, { key: this.ids.next(), cook: { ...cook, id, serviceId: named(services, service), comesOffAt: toIso(wallAt(comesOffAt)) } }));
      loadings.set(await this.addTask(lead, 'load', loading, wallAt(onAt)), loading);
      if (wallAt(comesOffAt) < endsAt) loadings.set(await this.addTask(lead, 'unload', loading, wallAt(comesOffAt)), loading);
    }
    return loadings;
  }

  private async addTask(lead: Actor, kind: 'load' | 'unload', loading: Loading, at: EpochS): Promise<TaskId> {
    const id = this.ids.next<TaskId>();
    await this.done(lead, this.tasks.add(lead, {
      key: this.ids.next(), id, kind, pitId: loading.lies[0]?.pitId ?? null, earliestAt: toIso(later(at, -5 * MINUTE_S)), dueAt: toIso(later(at, 10 * MINUTE_S)),
      latestAt: toIso(later(at, 45 * MINUTE_S)), lengthS: LOAD_S, people: 1,
    }));
    return id;
  }
}

function named<T>(all: ReadonlyMap<string, T>, name: string): T {
  const one = all.get(name);
  if (one === undefined) throw new Error(`The sample speaks of ${name}, which is not in it.`);
  return one;
}
const pitNamed = (pits: readonly PitSettings[], name: string) => named(new Map(pits.map((pit) => [pit.name, pit.id])), name);
