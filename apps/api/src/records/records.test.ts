import { problem, recordNights, recordsView } from '@stokehold/domain/contract';
import { later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { AlarmsModule } from '../alarms/index.js';
import { CookingModule } from '../cooking/index.js';
import { TestNight } from '../pits/testing.js';
import { RecordsModule } from './index.js';

let night: TestNight;
const cookId = randomUUID();
/** As somebody may type them: a formula, marks that turn the reading, HTML, SQL. */
const NASTY = `=cmd|' /C calc'!A0 \u202e\u2066<script>alert(1)</script>'); drop table yard; --`;

beforeAll(async () => {
  night = await TestNight.open(1, { modules: [AlarmsModule, CookingModule, RecordsModule] });
  await night.post('/checks', { pitId: night.pits[0], seenAt: night.ago(20), sentAt: toIso(later(night.house.now, 600)), bed: 'fair', left: 'some', raked: true, splits: 2, note: NASTY });
  await night.post('/cooks', { cook: { id: cookId, cut: 'Brisket', shape: 'slab', pieces: 6, weightKg: 37.8, serviceId: null, comesOffAt: null } });
  await night.post('/placements', { cookId, lies: [{ pitId: night.pits[0], zone: 1, pieces: 6 }] });
  await night.post('/food-log', { entries: [{ kind: 'reading', cookId, at: toIso(night.house.now), stage: 'holding', tempC: 50 }] });
});
afterAll(() => night.close());

const ask = (from: string, until: string) => request(night.house.app.getHttpServer()).get('/api/records').query({ from, until });
const tonight = async () => recordsView.parse((await ask(night.ago(120), toIso(later(night.house.now, 3600))).expect(200)).body);

it('a night comes whole: who, what, when by three clocks, with which device, and by which link of the chain', async () => {
  const { fire, food, wood, hours, head, trail, yard } = await tonight();
  expect(yard).toMatchObject({ name: 'Saltmarsh Yard', timeZone: 'America/Chicago', practice: false });
  // The device's clock was ten minutes fast: it showed 20 min ago what was 30 min ago.
  expect(fire).toMatchObject([{ person: 'Renske', device: 'Tablet', pit: 'Bess 1', bed: 'fair', splits: 2, lot: 'Oak', at: night.ago(30), deviceAt: night.ago(20), arrivedAt: toIso(night.house.now), marks: ['clock-off'] }]);
  expect(food).toMatchObject([{ person: 'Renske', device: 'Tablet', cut: 'Brisket', stage: 'holding', tempC: 50, corrected: false, byProbe: false }]);
  expect(wood.map(({ kind, stackPieces, cartPieces, device }) => [kind, stackPieces, cartPieces, device])).toEqual([['burned', 0, -2, 'Tablet'], ['bought', 400, 0, 'Tablet'], ['pulled', -30, 30, 'Tablet']]);
  expect(hours).toMatchObject([{ person: 'Renske', workedS: 12 * 3600, away: [], breaks: [] }]);
  expect(trail.map(({ command }) => command)).toEqual(expect.arrayContaining(['record-check', 'record-food', 'move-wood', 'plan-shift']));
  expect([head.nth, head.link.length]).toEqual([trail.at(-1)!.nth, 64]);
});

// FDA Food Code 2022, 3-501.16(A)(1): hot holding at 57 °C (135 °F) or above.
it('a value says which published limit it was held to, with section and edition, and no more', async () => {
  const [cook] = (await tonight()).held;
  expect(cook).toMatchObject({ cookId, cut: 'Brisket', pieces: 6 });
  expect(cook!.findings.find(({ limit }) => limit === 'hot-hold')).toMatchObject({ code: 'food-code', edition: '2022', section: expect.stringContaining('3-501.16'), measured: { tempC: 50 } });
  expect(JSON.stringify(await tonight())).not.toMatch(/\b(safe|compliant)\b/i);
});

it('what is right is written beside a line, the line stays as it was, and the chain holds both', async () => {
  const [before] = (await tonight()).fire;
  const body = { log: 'fire', line: before!.id, isRight: 'One split went on, not two.', because: 'Miscounted with gloves on.' };
  await night.post('/records/corrections', body);
  const { fire, corrections, trail } = await tonight();
  expect(fire).toEqual([before]);
  expect(corrections).toMatchObject([{ ...body, person: 'Renske', device: 'Tablet' }]);
  expect(trail.at(-1)).toMatchObject({ command: 'correct-record', body });
  const unknown = await night.send('/records/corrections', { ...body, line: randomUUID() }).expect(404);
  expect(problem.parse(unknown.body).code).toBe('line-unknown');
});

it.each([
  { what: 'a stretch that ends before it begins', from: '2027-01-16T00:00:00Z', until: '2027-01-15T00:00:00Z', status: 409, code: 'times-out-of-order' },
  { what: 'thirty-two days', from: '2027-01-01T00:00:00Z', until: '2027-02-02T00:00:00Z', status: 409, code: 'range-too-long' },
  { what: 'a date that is none', from: '2027-02-30T00:00:00Z', until: '2027-03-01T00:00:00Z', status: 400, code: 'input-invalid' },
])('$what is refused with $code', async ({ from, until, status, code }) => {
  expect(problem.parse((await ask(from, until).expect(status)).body).code).toBe(code);
});

it('what was typed comes back as it was typed, letter for letter, and nothing of it is carried out', async () => {
  expect((await tonight()).fire[0]!.note).toBe(NASTY);
  expect(await night.rows('yard')).toHaveLength(1);
});

it('nights can be chosen, and the crew may not look', async () => {
  const { body } = await request(night.house.app.getHttpServer()).get('/api/records/nights').expect(200);
  expect(recordNights.parse(body)).toHaveLength(1);
});
