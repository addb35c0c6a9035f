import { alarmReport, type AlarmView, alarmView } from '@stokehold/domain/contract';
import { type EpochS, fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomBytes, randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ChecksReactions } from '../checks/index.js';
import { GatewayMessages, signatureOf } from '../gateways/index.js';
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
      'readings-recorded': [(event, deed) => alarms.onReadings(event, deed)],
      'alarm-changed': [(event, deed) => alarms.onAlarmChanged(event, deed)],
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

it('it says who was told: where nobody has the pit the lead, and whom it calls next', async () => {
  const alarm = (await ofKind('past-latest-safe'))!;
  expect(alarm.told).toEqual({ tier: 'lead', people: [night.person], next: { tier: 'everyone', at: toIso(later(fromIso(alarm.raisedAt), 600)) } });
  expect(await night.rows<{ people: string[] }>('alarm_call')).toMatchObject([{ people: [night.person] }]);
});

it('set aside, it does not call; too long a shelf is refused; and it ends by itself while the condition holds', async () => {
  const { id } = (await ofKind('past-latest-safe'))!;
  const refusal = await night.send(`/alarms/${id}/shelve`, { forS: 3600 }).expect(409);
  expect(refusal.body).toMatchObject({ code: 'shelf-too-long', values: { minutes: 15 } });
  await night.send(`/alarms/${id}/shelve`, { forS: 120 }).expect(201);
  await night.house.settle();
  expect(await ofKind('past-latest-safe')).toMatchObject({ told: null, shelf: { by: night.person, until: toIso(later(night.house.now, 120)) } });
  await night.minutes(1);
  expect((await ofKind('past-latest-safe'))?.told).toBeNull();
  await night.minutes(1);
  expect(await ofKind('past-latest-safe')).toMatchObject({ state: 'unacknowledged', shelf: null, told: { people: [night.person] } });
  await night.send(`/alarms/${id}/shelve`, { forS: 900 }).expect(201);
  await night.send(`/alarms/${id}/unshelve`, {}).expect(201);
  await night.house.settle();
  expect((await ofKind('past-latest-safe'))?.told).not.toBeNull();
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
  const rows = await night.rows<{ command: string; crew_member_id: string | null; body: { kind?: string; step?: string; from?: string; to?: string } }>('audit_entry', 'id');
  const steps = rows.filter(({ command, body }) => command === 'alarm-step' && body.kind === 'past-latest-safe').map(({ body }) => `${body.step}: ${body.from} > ${body.to}`);
  expect(steps).toEqual([
    'condition-began: normal > unacknowledged', 'shelf-ended: unacknowledged > unacknowledged', 'reminder-due: acknowledged > unacknowledged',
    'condition-ended: unacknowledged > returned-unacknowledged',
  ]);
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

it('the most pressing alarm comes first, and what is only its consequence stands under it and calls nobody', async () => {
  await letItPass();
  for (let minute = 0; minute < 300 && !(await ofKind('bed-nearly-out')); minute++) await night.minutes(1);
  expect((await view()).map(({ kind }) => kind)).toEqual(['bed-nearly-out', 'past-latest-safe', 'wood-short']);
  const [bed, late] = await view();
  expect(late).toMatchObject({ underId: bed!.id, told: null });
  expect(bed!.told).not.toBeNull();
});

it('a temperature that runs away is told at once, above all others, and holds for a quarter of an hour', async () => {
  for (let tempC = 121; tempC < 150; tempC += 4) {
    night.house.now = later(night.house.now, 10);
    await night.send('/readings', { readings: [{ probeId: night.probes[0], tempC, takenAt: toIso(night.house.now) }] }).expect(201);
    await night.house.settle();
  }
  const [first] = await view();
  expect(first).toMatchObject({ kind: 'running-away', pitId: night.pits[0], state: 'unacknowledged' });
  const raised = (await night.rows<{ kind: string }>('alarm')).filter(({ kind }) => kind === 'running-away');
  expect(raised).toHaveLength(1);
  await night.send(`/alarms/${first!.id}/acknowledge`, {}).expect(201);
  await night.minutes(3);
  // Somebody took note: two minutes later it asks again, for nobody opens a pit to see whether it burns.
  expect(await ofKind('running-away')).toMatchObject({ state: 'unacknowledged' });
  await night.minutes(13);
  expect(await ofKind('running-away')).toMatchObject({ state: 'returned-unacknowledged' });
});

describe('a chamber that leaves its band', () => {
  /** Both probes read every ten seconds for a minute and a half, and the minute is told. */
  const read = async (tempC: number, more: object = {}, firstC = tempC) => {
    for (let nth = 0; nth < 9; nth++) {
      night.house.now = later(night.house.now, 10);
      const readings = night.probes.map((probeId, end) => ({ probeId, takenAt: toIso(night.house.now), tempC: (end === 0 ? firstC : tempC) + (nth % 3) / 10, ...more }));
      await night.send('/readings', { readings }).expect(201);
    }
    await night.house.settle();
    await night.minutes(1);
  };
  it('calls when no check is due and none was just made, and is over when it is back by the deadband', async () => {
    await read(121);
    await night.check({ bed: 'full', left: 'most', splits: 1 }).expect(201);
    await night.house.settle();
    await read(115);
    expect(await ofKind('below-band')).toMatchObject({ suppressedBy: 'after-check', told: null, priority: 'low' });
    for (let minute = 0; minute < 3; minute++) await read(115);
    const late = (await ofKind('below-band'))!;
    expect(late.state).toBe('unacknowledged');
    expect(late.suppressedBy === null ? late.told : late.suppressedBy).toBeTruthy();
    await read(121);
    expect(['returned-unacknowledged', undefined]).toContain((await ofKind('below-band'))?.state);
  });
  it('a wire that opens is one alarm and no band alarm, and over when the probe reads again', async () => {
    await read(0, { tempC: undefined, fault: 'open' });
    await read(0, { tempC: undefined, fault: 'open' });
    const failed = (await view()).filter(({ kind }) => kind === 'probe-failed');
    expect(failed.map(({ probeId }) => probeId).sort()).toEqual([...night.probes].sort());
    expect((await view()).filter(({ kind, state }) => (kind === 'below-band' || kind === 'above-band') && state === 'unacknowledged')).toEqual([]);
    for (let minute = 0; minute < 5; minute++) await read(121);
    expect((await view()).filter(({ kind, state }) => kind === 'probe-failed' && state !== 'returned-unacknowledged')).toEqual([]);
  });
  it('readings that come three hours late raise nothing, however fast they climbed', async () => {
    const heat = async () => (await night.rows<{ kind: string }>('alarm')).filter(({ kind }) => ['running-away', 'above-band', 'below-band'].includes(kind)).length;
    for (let minute = 0; minute < 3; minute++) await read(121);
    const before = await heat();
    const climbing = Array.from({ length: 60 }, (_, nth) => ({ probeId: night.probes[0], takenAt: toIso(later(night.house.now, 10 * nth - 3 * 3600)), tempC: 121 + nth }));
    await night.send('/readings', { readings: climbing }).expect(201);
    await night.house.settle();
    for (let minute = 0; minute < 3; minute++) await read(121);
    expect(await heat()).toBe(before);
    expect((await night.rows<{ temp_c: number }>('reading')).filter(({ temp_c }) => temp_c === 180)).toHaveLength(1);
  });
  it('a probe that is shorted and reads the air for half an hour makes no band alarm: the other speaks for the chamber', async () => {
    const states: (string | undefined)[] = [];
    for (let minute = 0; minute < 20; minute++) {
      await read(121, {}, 14);
      states.push((await ofKind('below-band'))?.state);
    }
    expect(states).not.toContain('unacknowledged');
  });
});

describe('a gateway that falls silent', () => {
  const [gateway, tokenHash] = [randomUUID(), randomBytes(32)];
  const told = async (status: string) => {
    const payload = Buffer.from(status);
    const topic = `stokehold/${night.house.yardId}/${gateway}/status`;
    expect(await night.house.app.get(GatewayMessages).take({ topic, payload, signature: signatureOf(payload, tokenHash) })).toEqual({ taken: true });
    await night.house.settle();
  };
  const facts = () => night.told.filter(({ kind }) => kind === 'gateway-changed').length;
  beforeAll(() => em().query(`insert into device values ($1, $2, 'Shed', 'gateway', $3, $4, null, null)`, [gateway, night.house.yardId, tokenHash, toIso(night.house.now)]));

  it('calls once it was silent for a minute, and not before; the same word again is no fact', async () => {
    await told('online');
    await night.minutes(1);
    expect(await ofKind('gateway-silent')).toBeUndefined();
    const before = facts();
    await told('offline');
    await told('offline');
    expect(facts()).toBe(before + 1);
    await night.minutes(1);
    expect(await ofKind('gateway-silent')).toMatchObject({ state: 'unacknowledged', deviceId: gateway });
  });

  it('is over when it is heard again, and when it is revoked', async () => {
    await told('online');
    await night.minutes(1);
    expect(await ofKind('gateway-silent')).toMatchObject({ state: 'returned-unacknowledged' });
    await told('offline');
    await night.minutes(2);
    expect(await ofKind('gateway-silent')).toMatchObject({ state: 'unacknowledged' });
    await night.send(`/devices/${gateway}/revoke`, {}).expect(201);
    await night.house.settle();
    await night.minutes(1);
    expect(await ofKind('gateway-silent')).toMatchObject({ state: 'returned-unacknowledged' });
  });
});

it('what nobody may set aside is refused as such', async () => {
  const away = (await ofKind('running-away'))!;
  expect((await night.send(`/alarms/${away.id}/shelve`, { forS: 60 }).expect(409)).body.code).toBe('alarm-not-shelvable');
});

it('the night is reported by person and by alarm, beside its targets', async () => {
  const { body } = await request(night.house.app.getHttpServer()).get('/api/alarms/report').expect(200);
  const report = alarmReport.parse(body);
  const calls = (await night.rows<{ people: string[] }>('alarm_call')).length;
  expect(report.calls).toBe(calls);
  expect(report.people).toMatchObject([{ personId: night.person, calls }]);
  expect(report.badActors.reduce((sum, one) => sum + one.calls, 0)).toBe(calls);
  expect(report.people[0]!.mostInTenMinutes).toBeLessThanOrEqual(report.targets.mostPerTenMinutes);
  await request(night.house.app.getHttpServer()).get(`/api/alarms/report?shiftId=${randomUUID()}`).expect(404);
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
