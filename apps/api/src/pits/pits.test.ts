import { fireView, dueView, adviceView } from '@stokehold/domain/contract';
import { epochS, type EpochS, fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { afterEach, expect, it } from 'vitest';
import { ChecksReactions } from '../checks/index.js';
import { Deeds } from '../platform/index.js';
import { Fires, PitsReactions } from './index.js';
import { TestNight } from './testing.js';

let night: TestNight;
afterEach(() => night.close());

interface Kept { pit_id: string; belief: Buffer; believed_at: Date; estimate: object; due: object | null; advice: object | null }
const kept = () => night.rows<Kept>('pit_fire', 'pit_id');
const fires = () => night.house.app.get(Fires);
const view = async () => (await fires().view(night.house.database.manager, night.house.yardId, night.house.now))[0]!;
const due = async () => (await fires().dues(night.house.database.manager, night.house.yardId))[0]!;
const minutesTo = async (at: EpochS) => Math.round((at - night.house.now) / 60);
const told = (kind: string) => night.told.filter((event) => event.kind === kind);
const readings = (temps: readonly [number, number], seconds: readonly number[], more: object = {}) =>
  night.post('/readings', {
    readings: seconds.flatMap((ago) => temps.map((tempC, end) => ({ probeId: night.probes[end], tempC, takenAt: toIso(later(night.house.now, -ago)) }))),
    ...more,
  });
const inDeed = (work: (deed: Parameters<PitsReactions['onMinute']>[1]) => Promise<void>) => night.house.app.get(Deeds).run(night.house.yardId, work);

it('a fire that was lit hours before anybody told of it is taken as kept, and what is believed fits the contract', async () => {
  night = await TestNight.open();
  const { fire, due: asked, advice, past } = await view();
  expect(fireView.parse(fire)).toMatchObject({ mode: 'burning' });
  dueView.parse(asked);
  adviceView.parse(advice);
  expect(past).toHaveLength(1);
  expect(fire?.forecast.p50).toHaveLength(46);
  expect(fire?.zoneTempC).toHaveLength(3);
});

it('a pit that is lit at its light-up time is cold until then and in start-up after it, first looked at within 45 minutes', async () => {
  night = await TestNight.open(1, { lightAt: fromIso('2027-01-15T23:10:00Z') });
  expect(await kept()).toEqual([]);
  await night.minutes(9);
  expect(await kept()).toEqual([]);
  await night.minutes(3);
  expect((await view()).fire?.mode).toBe('start-up');
  const { dueAt, lastLookAt, why } = await due();
  expect(why).toBe('start-up');
  expect(lastLookAt).toBe(fromIso('2027-01-15T23:10:00Z'));
  expect((dueAt - lastLookAt) / 60).toBeGreaterThanOrEqual(15);
  expect((dueAt - lastLookAt) / 60).toBeLessThanOrEqual(45);
});

it('a fire whose lighting was late begins when the task was done', async () => {
  night = await TestNight.open(1, { lightAt: fromIso('2027-01-15T23:10:00Z') });
  await night.minutes(20);
  const [task] = await night.rows<{ id: string; kind: string }>('task');
  expect(task?.kind).toBe('light');
  const doneAt = night.ago(1);
  await night.post(`/tasks/${task!.id}/done`, { doneAt });
  await night.house.settle();
  expect((await due()).lastLookAt).toBe(fromIso(doneAt));
  expect(night.told.filter((event) => event.kind === 'fire-estimated').at(-1)).toMatchObject({ because: 'task', pitIds: night.pits });
});

it('offcuts that the book knows of are among the choices, and no more of them than lie there', async () => {
  night = await TestNight.open();
  const offered = async () => {
    await night.check().expect(201);
    await night.house.settle();
    const { advice } = await view();
    return [advice!.action, ...advice!.alternatives.map(({ action }) => action)].filter((action) => action.includes('offcut')).sort();
  };
  expect(await offered()).toEqual([]);
  for (const [found, choices] of [[1, ['offcut']], [2, ['offcut', 'two-offcuts']]] as const) {
    await night.minutes(2);
    await night.post('/offcut-recounts', { lotId: night.lotId, found, reason: 'counted' });
    expect(await offered()).toEqual(choices);
  }
});

it('a check moves the due time, tells so, and gets advice of its own time', async () => {
  night = await TestNight.open();
  const before = await due();
  await night.minutes(12);
  night.told.length = 0;
  await night.check({ splits: 2, bed: 'full', left: 'some', fireEndTempC: 122, stackEndTempC: 119 }).expect(201);
  await night.house.settle();
  const after = await due();
  expect(after.dueAt - before.dueAt).toBeGreaterThan(300);
  expect(after).toMatchObject({ lastLookAt: night.house.now });
  expect(after.earliestAt <= after.dueAt && after.dueAt <= after.latestSafeAt).toBe(true);
  expect(told('fire-estimated')).toMatchObject([{ because: 'check', pitIds: night.pits }]);
  expect(told('due-moved')).toMatchObject([{ because: 'check', pitIds: night.pits }]);
  expect((await view()).advice?.madeAt).toBe(toIso(night.house.now));
  expect((await view()).past.at(-1)).toEqual({ at: toIso(night.house.now), tempC: 120.5 });
});

it('splits put on are in the estimate: two make it warmer half an hour later than none', async () => {
  night = await TestNight.open(2);
  await night.check({ splits: 0, bed: 'fair', left: 'coals' }).expect(201);
  await night.post('/wood-moves', { lotId: night.lotId, pitId: night.pits[1], pieces: 10, way: 'pull' });
  await night.check({ pitId: night.pits[1], splits: 2, bed: 'fair', left: 'coals' }).expect(201);
  await night.minutes(30);
  const [none, two] = await Promise.all(night.pits.map(async (id) => (await fires().view(night.house.database.manager, night.house.yardId, night.house.now)).find(({ pitId }) => pitId === id)!));
  expect(two!.fire!.chamberTempC.p50 - none!.fire!.chamberTempC.p50).toBeGreaterThan(8);
  expect(two!.fire!.splitsBurning).toBeGreaterThan(none!.fire!.splitsBurning);
});

it('readings pull the estimate to them, and sent three times they are one row and the same estimate', async () => {
  const estimates: unknown[] = [];
  const rows: number[] = [];
  for (const times of [1, 3]) {
    night = await TestNight.open();
    await night.minutes(20, async () => {
      for (let time = 0; time < times; time++) await readings([129, 125], [0, 30]);
    });
    const { fire } = await view();
    expect(Math.abs(fire!.chamberTempC.p50 - 127)).toBeLessThan(3);
    estimates.push(fire);
    rows.push((await night.rows('reading', 'taken_at')).length);
    if (times === 1) await night.close();
  }
  expect(estimates[1]).toEqual(estimates[0]);
  expect(rows[1]).toBe(rows[0]);
});

it('a probe that fails is kept and not used: the estimate stays where the fire is', async () => {
  night = await TestNight.open();
  await night.minutes(20, () => readings([122, 119], [10]));
  const before = (await view()).fire!.chamberTempC.p50;
  await night.minutes(4, () => readings([20, 119], [10]));
  expect(Math.abs((await view()).fire!.chamberTempC.p50 - before)).toBeLessThan(4);
  expect((await night.rows<{ temp_c: number }>('reading', 'taken_at')).filter(({ temp_c }) => temp_c === 20)).toHaveLength(4);
});

it('a minute, a check and a shift that are carried twice come out the same', async () => {
  night = await TestNight.open();
  await night.minutes(6);
  const { body } = await night.check({ splits: 1 }).expect(201);
  await night.house.settle();
  const once = await kept();
  await inDeed((deed) => night.house.app.get(ChecksReactions).onCheckRecorded({ kind: 'check-recorded', pitId: night.pits[0]!, checkId: body.check.id }, deed));
  expect(await kept()).toEqual(once);
  night.house.now = epochS(Math.ceil(night.house.now / 120) * 120 + 120);
  await inDeed((deed) => night.house.app.get(PitsReactions).onMinute({ kind: 'minute-passed' }, deed));
  const after = [await kept(), await night.rows('fire_estimate', 'pit_id, at')];
  await inDeed((deed) => night.house.app.get(PitsReactions).onMinute({ kind: 'minute-passed' }, deed));
  expect([await kept(), await night.rows('fire_estimate', 'pit_id, at')]).toEqual(after);
});

it('a check that was made 25 minutes ago without signal is taken in at its time, as if it had come at once', async () => {
  const seen = { splits: 2, bed: 'fair', left: 'coals', raked: true };
  const estimates: number[] = [];
  for (const late of [0, 25]) {
    night = await TestNight.open();
    await night.minutes(10);
    const seenAt = toIso(night.house.now);
    if (late === 0) await night.check({ ...seen, seenAt }).expect(201);
    await night.minutes(26);
    if (late > 0) await night.check({ ...seen, seenAt }).expect(201);
    await night.house.settle();
    expect((await due()).lastLookAt).toBe(fromIso(seenAt));
    estimates.push((await view()).fire!.chamberTempC.p50);
    if (late === 0) await night.close();
  }
  expect(Math.abs(estimates[0]! - estimates[1]!)).toBeLessThan(2);
});

it('a phone 45 minutes fast does not carry a fire into the future', async () => {
  night = await TestNight.open();
  await night.check({ seenAt: night.ago(-45), sentAt: night.ago(-45) }).expect(201);
  await night.house.settle();
  expect((await kept())[0]?.believed_at.getTime()).toBe(night.house.now * 1000);
  expect((await due()).lastLookAt).toBe(night.house.now);
});

it('a due time that has come does not slide along with the clock', async () => {
  night = await TestNight.open();
  await night.check({ splits: 0, bed: 'low', left: 'coals' }).expect(201);
  await night.minutes(30);
  const { dueAt } = await due();
  expect(await minutesTo(dueAt)).toBeLessThan(0);
  await night.minutes(20);
  expect((await due()).dueAt).toBe(dueAt);
});

it('a fire that nobody keeps tonight asks for nothing', async () => {
  night = await TestNight.open(2);
  expect(await fires().dues(night.house.database.manager, night.house.yardId)).toHaveLength(2);
  await night.plan(later(night.house.now, -3 * 3600), [night.pits[0]!]);
  await night.house.settle();
  expect((await fires().dues(night.house.database.manager, night.house.yardId)).map(({ pitId }) => pitId)).toEqual([night.pits[0]]);
});

it('bytes that cannot be read any more start the fire anew instead of stopping the night', async () => {
  night = await TestNight.open();
  await night.house.database.query('update pit_fire set belief = $1', [Buffer.alloc(80)]);
  await night.minutes(2);
  expect(fireView.parse((await view()).fire).mode).not.toBe('out');
});

it('an hour of minutes, checks and garbage from a probe keeps the estimate finite and its past every two minutes', async () => {
  night = await TestNight.open(2);
  const garbage = [1200, -60, 350, 0, 121];
  await night.minutes(60, async (now) => {
    await readings([garbage[(now / 60) % garbage.length]!, 120], [5]);
    if ((now / 60) % 20 === 0) await night.check({ splits: 1, pitId: night.pits[(now / 1200) % 2] }).expect(201);
  });
  for (const { fire } of await fires().view(night.house.database.manager, night.house.yardId, night.house.now)) {
    const numbers = [fire!.bedKg, fire!.dryKgPerS, fire!.chamberTempC.p10, fire!.chamberTempC.p50, fire!.chamberTempC.p90, ...fire!.zoneTempC, ...fire!.forecast.p50];
    expect(numbers.every((number) => Number.isFinite(number))).toBe(true);
    expect(fire!.chamberTempC.p50).toBeGreaterThan(40);
    expect(fire!.chamberTempC.p50).toBeLessThan(220);
  }
  const { past } = await view();
  expect(past.length).toBeGreaterThanOrEqual(30);
});

it('pits of the same name and time come out the same to the last bit, whatever their ids', async () => {
  const nights: unknown[] = [];
  for (let nth = 0; nth < 2; nth++) {
    night = await TestNight.open();
    await night.minutes(4);
    await night.check({ key: randomUUID(), splits: 2 }).expect(201);
    await night.house.settle();
    await night.minutes(6);
    const [row] = await kept();
    nights.push([row!.estimate, row!.due, row!.advice, row!.belief.toString('hex')]);
    if (nth === 0) await night.close();
  }
  expect(nights[1]).toEqual(nights[0]);
});
