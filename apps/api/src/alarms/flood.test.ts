import { alarmReport, type AlarmView, alarmView } from '@stokehold/domain/contract';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ChecksReactions } from '../checks/index.js';
import { PitsReactions } from '../pits/index.js';
import { allReactions, TestNight } from '../pits/testing.js';
import { Outbox } from '../platform/index.js';
import { Alarms, AlarmsModule, AlarmsReactions } from './index.js';

const PITS = 60;
let night: TestNight;
beforeAll(async () => {
  night = await TestNight.open(PITS, { modules: [AlarmsModule] });
  const { app } = night.house;
  const [fires, checks, alarms] = [app.get(PitsReactions), app.get(ChecksReactions), app.get(AlarmsReactions)];
  app.get(Outbox).react(
    allReactions({
      'check-recorded': [(event, deed) => checks.onCheckRecorded(event, deed)],
      'minute-passed': [(event, deed) => fires.onMinute(event, deed), (event, deed) => alarms.onMinute(event, deed)],
      'fire-estimated': [(event, deed) => alarms.onFireEstimated(event, deed)],
    }),
  );
}, 60_000);
afterAll(() => night.close());

const open = async (): Promise<AlarmView[]> => alarmView.array().parse(await night.house.app.get(Alarms).view(night.house.database.manager, night.house.yardId));

it('sixty fires that nobody looks at make more than a hundred alarms: each stands with its fire under its first cause, and nobody is called more often than a person can heed', async () => {
  for (let minute = 0; minute < 300 && (await open()).length < 2 * PITS; minute += 10) await night.minutes(10);
  const alarms = await open();
  expect(alarms.length).toBeGreaterThan(100);
  for (const pitId of night.pits) {
    const [first, ...others] = alarms.filter((alarm) => alarm.pitId === pitId);
    expect([first!.kind, first!.underId, first!.told !== null]).toEqual(['bed-nearly-out', null, true]);
    expect(others.map(({ underId, told }) => ({ underId, told }))).toEqual(others.map(() => ({ underId: first!.id, told: null })));
  }
  const report = alarmReport.parse((await request(night.house.app.getHttpServer()).get('/api/alarms/report').expect(200)).body);
  expect(report.people.map(({ mostInTenMinutes }) => mostInTenMinutes <= 10)).toEqual([true]);
  expect(report.floodFrac).toBe(0);
  expect(report.calls).toBeLessThan(alarms.length);
}, 120_000);
