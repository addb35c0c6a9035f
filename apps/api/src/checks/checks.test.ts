import { epochS, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { Fires } from '../pits/index.js';
import { TestNight } from '../pits/testing.js';
import { Checks } from './index.js';

let night: TestNight;
beforeAll(async () => {
  night = await TestNight.open(2);
});
beforeEach(async () => {
  await night.house.settle();
  night.told.length = 0;
  night.house.now = later(night.house.now, 300);
});
afterAll(() => night.close());

interface Row { id: string; seen_at: Date; device_seen_at: Date; arrived_at: Date; marks: string[]; lot_id: string | null; was_due_at: Date | null; clock_offset_s: number }
const checks = () => night.rows<Row>('fire_check', 'arrived_at, id');
const last = async () => (await checks()).at(-1)!;
const moves = async () => (await night.rows<{ kind: string; cart_pieces: number; check_id: string | null; lot_id: string }>('wood_move', 'moved_at, id')).filter(({ kind }) => kind === 'burned');
const secondsOf = (at: Date) => at.getTime() / 1000;

it('a check is kept with its person, its lot and the due time it answered, and its splits leave the cart', async () => {
  const due = (await night.house.app.get(Fires).dues(night.house.database.manager, night.house.yardId)).find(({ pitId }) => pitId === night.pits[0]);
  const { body } = await night.check({ splits: 2, fireEndTempC: 122, stackEndTempC: 118, smoke: 'clean', note: 'wind turned' }).expect(201);
  expect(body.check).toMatchObject({
    pitId: night.pits[0], personId: night.person, seenAt: toIso(night.house.now), splits: 2, lotId: night.lotId, marks: [], smoke: 'clean', note: 'wind turned', size: 'standard',
  });
  expect(due).toBeDefined();
  expect(await last()).toMatchObject({ id: body.check.id, lot_id: night.lotId });
  expect(secondsOf((await last()).was_due_at!)).toBe(due!.dueAt);
  expect((await moves()).at(-1)).toMatchObject({ cart_pieces: -2, check_id: body.check.id, lot_id: night.lotId });
});

it('how the air was left is kept with the check, and left unsaid it is not known', async () => {
  const air = { door: 'two-fingers', damper: 'three-quarters', screen: true };
  expect((await night.check({ air }).expect(201)).body.check.air).toEqual(air);
  expect(await last()).toMatchObject(air);
  night.house.now = later(night.house.now, 60);
  expect((await night.check().expect(201)).body.check.air).toBeNull();
  expect(await last()).toMatchObject({ door: null, damper: null, screen: null });
});

it('the same key again brings the first answer, and no second check and no second split', async () => {
  const before = [(await checks()).length, (await moves()).length];
  const key = randomUUID();
  const first = await night.check({ key }).expect(201);
  const again = await night.check({ key, seenAt: first.body.check.seenAt }).expect(201);
  expect(again.body).toEqual(first.body);
  expect([(await checks()).length, (await moves()).length]).toEqual([before[0]! + 1, before[1]! + 1]);
});

it('the same key with another look is refused', async () => {
  const key = randomUUID();
  await night.check({ key }).expect(201);
  expect((await night.check({ key, splits: 2 }).expect(422)).body.code).toBe('key-reused');
});

it.each([
  { what: 'an unknown pit', more: { pitId: randomUUID() }, status: 404, code: 'pit-unknown' },
  { what: 'an unknown lot', more: { lotId: randomUUID() }, status: 404, code: 'lot-unknown' },
  { what: '900 °F at the grate', more: { fireEndTempC: 482 }, status: 400, code: 'input-invalid', field: 'fireEndTempC' },
  { what: 'seven splits', more: { splits: 7 }, status: 400, code: 'input-invalid', field: 'splits' },
  { what: 'a wall time', more: { seenAt: '2027-01-15T23:00' }, status: 400, code: 'input-invalid', field: 'seenAt' },
  { what: 'a bed that is no grade', more: { bed: 'glowing' }, status: 400, code: 'input-invalid', field: 'bed' },
])('$what is refused with $status $code, and nothing stays', async ({ more, status, code, field }) => {
  const before = [(await checks()).length, (await moves()).length, (await night.rows('outbox')).length];
  const { body } = await night.check(more).expect(status);
  expect(body.code).toBe(code);
  if (field) expect(body.fields[0].path).toBe(field);
  expect([(await checks()).length, (await moves()).length, (await night.rows('outbox')).length]).toEqual(before);
});

it('a pit that does not burn in the shift of that time takes no check', async () => {
  await night.plan(later(night.house.now, -10_800), [night.pits[0]!]);
  expect((await night.check({ pitId: night.pits[1] }).expect(409)).body.code).toBe('pit-not-burning');
  await night.plan(later(night.house.now, -10_800));
});

it('a check two minutes ahead is refused, one that a fast clock explains is kept', async () => {
  const { body } = await night.check({ seenAt: night.ago(-2) }).expect(409);
  expect(body).toMatchObject({ code: 'check-in-the-future', values: { aheadS: 120 } });
  expect((await night.check({ seenAt: night.ago(-2), sentAt: night.ago(-2) }).expect(201)).body.check.seenAt).toBe(toIso(night.house.now));
});

it('a check of 73 hours ago is refused', async () => {
  expect((await night.check({ seenAt: night.ago(73 * 60) }).expect(409)).body.code).toBe('check-too-old');
});

it('a phone 45 minutes fast: the check is kept at its true time with a mark, and all three times stay', async () => {
  const { body } = await night.check({ seenAt: night.ago(1 - 45), sentAt: night.ago(-45) }).expect(201);
  expect(body).toMatchObject({ clockOffsetS: -2700, check: { seenAt: night.ago(1), marks: ['clock-off'] } });
  const row = await last();
  expect([secondsOf(row.seen_at), secondsOf(row.device_seen_at), secondsOf(row.arrived_at)]).toEqual([
    night.house.now - 60, night.house.now + 44 * 60, night.house.now,
  ]);
});

it('a check older than the last is kept as a second look: its split is taken, its observation corrects nothing', async () => {
  await night.check().expect(201);
  await night.house.settle();
  const before = await night.rows<{ belief: Buffer }>('pit_fire', 'pit_id');
  const burned = (await moves()).length;
  const { body } = await night.check({ seenAt: night.ago(4), bed: 'low', left: 'coals' }).expect(201);
  await night.house.settle();
  expect(body.check).toMatchObject({ marks: ['second-look'], wasDueAt: null, lotId: night.lotId });
  expect((await moves()).length).toBe(burned + 1);
  expect(await night.rows('pit_fire', 'pit_id')).toEqual(before);
});

it('two splits where none is on the cart: the check is kept with a mark, and no wood is invented', async () => {
  const burned = (await moves()).length;
  const { body } = await night.check({ pitId: night.pits[1], splits: 2 }).expect(201);
  expect(body.check).toMatchObject({ marks: ['not-on-cart'], lotId: null });
  expect((await moves()).length).toBe(burned);
});

it('the checks of a pit are read back since a time, and not those of a yard elsewhere', async () => {
  const since = toIso(night.house.now);
  night.house.now = later(night.house.now, 60);
  const { body } = await night.check().expect(201);
  const read = (pitId: string) => request(night.house.app.getHttpServer()).get('/api/checks').query({ pitId, since });
  expect((await read(night.pits[0]!).expect(200)).body).toEqual([body.check]);
  expect((await read(randomUUID()).expect(404)).body.code).toBe('pit-unknown');
  const recent = await night.house.app.get(Checks).recent(night.house.database.manager, night.house.yardId, later(night.house.now, -60));
  expect(recent).toEqual([body.check]);
});

it('twenty checks at once are twenty checks, and exactly the late ones are second looks', async () => {
  const before = await checks();
  const answers = await Promise.all(Array.from({ length: 20 }, (_, nth) => night.check({ seenAt: toIso(later(night.house.now, -nth)), splits: 0 })));
  expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(201));
  const kept = (await checks()).filter(({ id }) => !before.some((row) => row.id === id));
  expect(kept).toHaveLength(20);
  expect(kept.filter(({ marks }) => !marks.includes('second-look')).length).toBeGreaterThan(0);
  expect(kept.find(({ seen_at }) => secondsOf(seen_at) === night.house.now)?.marks).toEqual([]);
});

it('a look half an hour after the shift has ended is kept, two hours after it is none of its fires', async () => {
  const [shift] = await night.rows<{ ends_at: Date }>('shift');
  const end = secondsOf(shift!.ends_at);
  night.house.now = epochS(end + 1800);
  await night.check({ splits: 0 }).expect(201);
  night.house.now = epochS(end + 7200);
  expect((await night.check({ splits: 0 }).expect(409)).body.code).toBe('pit-not-burning');
});
