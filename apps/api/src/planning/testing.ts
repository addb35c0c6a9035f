import { planView, type EventKind, type PlanView } from '@stokehold/domain/contract';
import { fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { ChecksModule, ChecksReactions } from '../checks/index.js';
import { PitsModule, PitsReactions } from '../pits/index.js';
import { Outbox, type Reaction, type Reactions } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { ShiftsModule } from '../shifts/index.js';
import { PlanningModule, PlanningReactions, Plans } from './index.js';

export const EVENING = fromIso('2027-01-15T23:00:00Z');
export const band = { lowC: 118, highC: 124 };
export const at = (hours: number) => toIso(later(EVENING, Math.round(hours * 3600)));
export const rest = (id: string, from: number, until: number, lengthS = 1800) => ({ id, lengthS, earliestAt: at(from), latestAt: at(until) });
export const on = (personId: string, breaks: object[] = [], from = 0, until = 12) => ({ personId, startsAt: at(from), endsAt: at(until), breaks });

/** What causes plans, and nothing else. */
export function wirePlanning({ app }: TestHouse): void {
  const [checks, pits, planning] = [app.get(ChecksReactions), app.get(PitsReactions), app.get(PlanningReactions)];
  const none = new Proxy({} as Record<EventKind, Reaction<never>[]>, { get: (known, kind: EventKind) => known[kind] ?? [] }) as unknown as Reactions;
  const own: Partial<Reactions> = {
    'crew-set-up': [(event, deed) => planning.onSetUp(event, deed)],
    'shift-planned': [(event, deed) => pits.onShiftPlanned(event, deed), (event, deed) => planning.onShift(event, deed)],
    'presence-reported': [(event, deed) => planning.onPresence(event, deed)],
    'break-reported': [(event, deed) => planning.onBreak(event, deed)],
    'task-added': [(event, deed) => planning.onTask(event, deed)],
    'task-finished': [(event, deed) => pits.onTaskFinished(event, deed), (event, deed) => planning.onTask(event, deed)],
    'work-pinned': [(event, deed) => planning.onPinned(event, deed)],
    'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
    'minute-passed': [(event, deed) => pits.onMinute(event, deed), (event, deed) => planning.onMinute(event, deed)],
    'due-moved': [(event, deed) => planning.onDueMoved(event, deed)],
  };
  app.get(Outbox).react(Object.assign(none, own));
}

/** A house with planning alone, in the evening, with these people and pits of one row. */
export async function openPlanningHouse(people: Readonly<Record<string, string>>, pits: Readonly<Record<string, string>>): Promise<TestHouse> {
  const house = await openTestHouse([ShiftsModule, PitsModule, ChecksModule, PlanningModule]);
  wirePlanning(house);
  house.now = EVENING;
  for (const [name, id] of Object.entries(people)) {
    await house.database.query(`insert into crew_member values ($1, $2, $3, 'crew', 'en', 2000, null, false)`, [id, house.yardId, name]);
    await house.database.query(`insert into skill values ($1, 'fire'), ($1, 'food'), ($1, 'lifting')`, [id]);
  }
  for (const [nth, [name, id]] of Object.entries(pits).entries()) await addPit(house, id, name, 5 + 8 * nth);
  return house;
}

export async function addPit({ database, yardId }: TestHouse, id: string, name: string, xM: number): Promise<void> {
  await database.query(`insert into pit values ($1, $2, $3, $4, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [id, yardId, name, xM]);
  await database.query('insert into zone values ($1, 0, 1.15), ($1, 1, 1.15)', [id]);
}

/** The yard over its API. */
export const asking = (house: TestHouse) => ({
  async post(path: string, body: object, status = 201) {
    const { body: reply } = await request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body }).expect(status);
    await house.settle();
    return reply;
  },
  async get(path: string, query: object = {}, status = 200) {
    return (await request(house.app.getHttpServer()).get(`/api${path}`).query(query).expect(status)).body;
  },
  async plan(): Promise<PlanView> {
    return planView.strict().parse(await house.app.get(Plans).view(house.database.manager, house.yardId));
  },
});

export const night = (people: object[], pits: readonly string[]) => ({
  id: randomUUID() as string, startsAt: at(0), endsAt: at(12), people, pits: pits.map((pitId, n) => ({ pitId, band, lightAt: at(0.25 + n / 10) })),
});
