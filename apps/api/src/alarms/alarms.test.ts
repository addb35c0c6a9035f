import { type AlarmView, alarmView } from '@stokehold/domain/contract';
import { type EpochS, fromIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ChecksReactions } from '../checks/index.js';
import { Fires, PitsReactions } from '../pits/index.js';
import { allReactions, TestNight } from '../pits/testing.js';
import { Outbox } from '../platform/index.js';
import { Alarms, AlarmsModule, AlarmsReactions } from './index.js';

let night: TestNight;
beforeAll(async () => {
  night = await TestNight.open(1, { modules: [AlarmsModule] });
  const { app } = night.house;
  const [fires, checks, alarms] = [app.get(PitsReactions), app.get(ChecksReactions), app.get(AlarmsReactions)];
  app.get(Outbox).react(
    allReactions({
      'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
      'minute-passed': [(event, deed) => fires.onMinute(event, deed), (event, deed) => alarms.onMinute(event, deed)],
      'fire-estimated': [(event, deed) => alarms.onFireEstimated(event, deed)],
    }),
  );
});
afterAll(() => night.close());

const em = () => night.house.database.manager;
const view = async (): Promise<AlarmView[]> => alarmView.array().parse(await night.house.app.get(Alarms).view(em(), night.house.yardId));
const ofKind = async (kind: AlarmView['kind']) => (await view()).find((alarm) => alarm.kind === kind);
const latestSafe = async () => fromIso((await night.house.app.get(Fires).view(em(), night.house.yardId, night.house.now))[0]!.due!.latestSafeAt);
const changes = () => night.told.filter(({ kind }) => kind === 'alarm-changed').length;
/** Nobody looks at the fire until it is past its latest safe time. */
async function letItPass(): Promise<EpochS> {
  for (let minute = 0; minute < 240 && night.house.now <= (await latestSafe()); minute++) await night.minutes(1);
  return night.house.now;
}

it('a fire that nobody looks at raises its alarm in the minute after its latest safe time, once', async () => {
  await night.check().expect(201);
  await night.house.settle();
  expect(await ofKind('past-latest-safe')).toBeUndefined();
  const raisedAt = await letItPass();
  const alarm = (await ofKind('past-latest-safe'))!;
  expect(alarm).toMatchObject({ state: 'unacknowledged', pitId: night.pits[0], returnedAt: null, acknowledgedBy: null });
  expect(fromIso(alarm.raisedAt)).toBe(raisedAt);
  const before = changes();
  await night.tell({ kind: 'minute-passed' });
  expect(changes()).toBe(before);
  expect((await night.rows<{ kind: string }>('alarm')).filter(({ kind }) => kind === 'past-latest-safe')).toHaveLength(1);
});

it('taking note does not clear it; the same key twice changes nothing twice', async () => {
  const alarm = (await ofKind('past-latest-safe'))!;
  const command = { key: randomUUID() };
  const before = changes();
  for (let i = 0; i < 2; i++) await night.send(`/alarms/${alarm.id}/acknowledge`, command).expect(201);
  await night.send(`/alarms/${alarm.id}/acknowledge`, {}).expect(201);
  await night.house.settle();
  expect(changes()).toBe(before + 1);
  expect(await ofKind('past-latest-safe')).toMatchObject({ state: 'acknowledged', acknowledgedBy: night.person });
  await night.minutes(1);
  expect((await ofKind('past-latest-safe'))?.state).toBe('acknowledged');
});

it('ten minutes later it asks again, and a check ends it at once', async () => {
  await night.minutes(10);
  expect(await ofKind('past-latest-safe')).toMatchObject({ state: 'unacknowledged', acknowledgedBy: null });
  await night.check({ bed: 'full', left: 'most', splits: 2 }).expect(201);
  await night.house.settle();
  const returned = (await ofKind('past-latest-safe'))!;
  expect(returned.state).toBe('returned-unacknowledged');
  await night.send(`/alarms/${returned.id}/acknowledge`, {}).expect(201);
  expect(await ofKind('past-latest-safe')).toBeUndefined();
});

it('every step stands in the audit trail, those of the house with what they led to', async () => {
  const rows = await night.rows<{ command: string; crew_member_id: string | null; body: { kind?: string; from?: string; to?: string } }>('audit_entry', 'id');
  const steps = rows.filter(({ command, body }) => command === 'alarm-step' && body.kind === 'past-latest-safe').map(({ body }) => `${body.from} > ${body.to}`);
  expect(steps).toEqual(['normal > unacknowledged', 'acknowledged > unacknowledged', 'unacknowledged > returned-unacknowledged']);
  expect(rows.filter(({ command }) => command === 'acknowledge-alarm').every(({ crew_member_id }) => crew_member_id === night.person)).toBe(true);
});

it('wood below the need is told for the whole yard, and is over when a lot comes in', async () => {
  await night.send('/recounts', { lotId: night.lotId, pitId: null, found: 0, reason: 'counted' }).expect(201);
  await night.send('/recounts', { lotId: night.lotId, pitId: night.pits[0], found: 1, reason: 'counted' }).expect(201);
  await night.minutes(5);
  expect(await ofKind('wood-short')).toMatchObject({ state: 'unacknowledged', pitId: null });
  await night.send('/recounts', { lotId: night.lotId, pitId: null, found: 300, reason: 'the rest was behind the shed' }).expect(201);
  await night.minutes(5);
  expect((await ofKind('wood-short'))?.state).toBe('returned-unacknowledged');
});

it('the most pressing alarm comes first', async () => {
  await letItPass();
  for (let minute = 0; minute < 300 && !(await ofKind('bed-nearly-out')); minute++) await night.minutes(1);
  expect((await view()).map(({ kind }) => kind)).toEqual(['bed-nearly-out', 'past-latest-safe', 'wood-short']);
});

it('an alarm of no yard or of another one is not known here', async () => {
  const answer = await night.send(`/alarms/${randomUUID()}/acknowledge`, {}).expect(404);
  expect(answer.body.code).toBe('alarm-unknown');
  const other = randomUUID();
  await em().query(`insert into yard select $1, 'Elsewhere', time_zone, units, language, 10, 10, 0, 1, 1, 1.2, 1.4, 5, false, 0, created_at from yard limit 1`, [other]);
  const foreign = randomUUID();
  await em().query(`insert into alarm values ($1, $2, 'wood-short', null, 'unacknowledged', now(), null, null, null)`, [foreign, other]);
  await night.send(`/alarms/${foreign}/acknowledge`, {}).expect(404);
  expect((await view()).some(({ id }) => id === foreign)).toBe(false);
});
