import type { Type } from '@nestjs/common';
import { type EpochS, epochS, later, type LotId, type PersonId, type PitId, type ProbeId, type ShiftId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { ChecksModule, ChecksReactions } from '../checks/index.js';
import { Outbox, type Reactions } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { PitsModule, PitsReactions } from './index.js';

/** A pit as Setup would send it: a steel drum of about 275 gallons with three zones and a probe at each end. */
const pitOf = (id: PitId, name: string, probes: readonly ProbeId[]) => ({
  id, name, xM: 3, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61,
  fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 0.7 }, { lengthM: 0.7 }, { lengthM: 0.7 }],
  probes: probes.map((probe, nth) => ({ id: probe, name: nth === 0 ? 'fire end' : 'stack end', zone: nth * 2 })),
  band: { lowC: 118, highC: 124 }, retired: false,
});

export const allReactions = (some: Partial<Reactions>): Reactions =>
  new Proxy(some, { get: (told, kind) => told[kind as keyof Reactions] ?? [] }) as Reactions;

/** A night for tests: a yard with pits that were lit at `lightAt`, a lot of oak on the first pit's cart, the real way of an event. */
export class TestNight {
  readonly told: { kind: string }[] = [];
  private constructor(
    readonly house: TestHouse,
    readonly pits: readonly PitId[],
    readonly probes: readonly ProbeId[],
    readonly lotId: LotId,
    readonly person: PersonId,
  ) {}

  static async open(pits = 1, more: { readonly lightAt?: EpochS; readonly modules?: readonly Type[] } = {}): Promise<TestNight> {
    const house = await openTestHouse([PitsModule, ChecksModule, ...(more.modules ?? [])]);
    const ids = Array.from({ length: pits }, () => randomUUID() as PitId);
    const [probes, lotId] = [[randomUUID() as ProbeId, randomUUID() as ProbeId], randomUUID() as LotId];
    const night = new TestNight(house, ids, probes, lotId, house.actor!.person!.id);
    const [fires, checks, outbox] = [house.app.get(PitsReactions), house.app.get(ChecksReactions), house.app.get(Outbox)];
    outbox.react(
      allReactions({
        'shift-planned': [(event, deed) => fires.onShiftPlanned(event, deed)],
        'task-finished': [(event, deed) => fires.onTaskFinished(event, deed)],
        'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
        'minute-passed': [(event, deed) => fires.onMinute(event, deed)],
      }),
    );
    outbox.listen(async (_, __, event) => void night.told.push(event));
    for (const [nth, id] of ids.entries()) await night.post('/pits', { pit: pitOf(id, `Bess ${nth + 1}`, nth === 0 ? probes : []) });
    await night.post('/lots', {
      lot: { id: lotId, name: 'Oak', species: 'white-oak', lengthM: 0.36, thicknessM: 0.092, moisture: 0.16, boughtAt: toIso(later(house.now, -86_400)), priceCents: 30_000 },
      pieces: 400,
    });
    await night.post('/wood-moves', { lotId, pitId: ids[0], pieces: 30, way: 'pull' });
    await night.plan(more.lightAt ?? later(house.now, -3 * 3600));
    await house.settle();
    return night;
  }

  /** A shift of twelve hours that began an hour ago. */
  plan(lightAt: EpochS, pits: readonly PitId[] = this.pits) {
    const from = later(this.house.now, -3600);
    return this.post('/shifts', {
      id: this.shiftId, startsAt: toIso(from), endsAt: toIso(later(from, 12 * 3600)),
      people: [{ personId: this.person, startsAt: toIso(from), endsAt: toIso(later(from, 12 * 3600)), breaks: [] }],
      pits: pits.map((pitId) => ({ pitId, band: { lowC: 118, highC: 124 }, lightAt: toIso(lightAt) })),
    });
  }
  private readonly shiftId = randomUUID() as ShiftId;

  send(path: string, body: object) {
    return request(this.house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
  }
  async post(path: string, body: object) {
    const answer = await this.send(path, body);
    if (answer.status >= 300) throw new Error(`${path} answered ${answer.status}: ${JSON.stringify(answer.body)}`);
    return answer;
  }
  check(more: object = {}) {
    return this.send('/checks', { pitId: this.pits[0], seenAt: toIso(this.house.now), bed: 'fair', left: 'some', raked: true, splits: 1, ...more });
  }

  /** Lets minutes pass, one event each, with the work in between. */
  async minutes(count: number, each: (now: EpochS) => Promise<unknown> = async () => undefined): Promise<void> {
    for (let minute = 0; minute < count; minute++) {
      this.house.now = epochS(Math.floor(this.house.now / 60) * 60 + 60);
      await each(this.house.now);
      await this.minute();
    }
  }
  async minute(): Promise<void> {
    await this.tell({ kind: 'minute-passed' });
  }
  async tell(event: object): Promise<void> {
    await this.house.database.query(
      `with numbered as (update yard set seq = seq + 1 where id = $1 returning seq)
       insert into outbox (yard_id, seq, event, at) select $1, seq, $2::jsonb, $3 from numbered`,
      [this.house.yardId, JSON.stringify(event), toIso(this.house.now)],
    );
    await this.house.settle();
  }
  rows<T>(table: string, order = '1'): Promise<T[]> {
    return this.house.database.query(`select * from ${table} order by ${order}`) as Promise<T[]>;
  }
  ago(minutes: number) {
    return toIso(later(this.house.now, -60 * minutes));
  }
  async close(): Promise<void> {
    await this.house.settle();
    await this.house.close();
  }
}
