import { afterPitView, alarmView, type CookCourse, cookCourse, cookWhatIf, cutSettings, type FoodEntryView, foodLimits } from '@stokehold/domain/contract';
import { cutByCode, truePiece } from '@stokehold/domain/food';
import { type CookId, epochS, fromIso, later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Alarms, AlarmsModule, AlarmsReactions } from '../alarms/index.js';
import { Food } from '../food/index.js';
import { PitsReactions } from '../pits/index.js';
import { allReactions, TestNight } from '../pits/testing.js';
import { Outbox } from '../platform/index.js';
import { CookingModule, CookingReactions, Watch } from './index.js';

let night: TestNight;
beforeAll(async () => {
  night = await TestNight.open(1, { modules: [AlarmsModule, CookingModule] });
  const { app } = night.house;
  const [fires, alarms, cooking] = [app.get(PitsReactions), app.get(AlarmsReactions), app.get(CookingReactions)];
  app.get(Outbox).react(
    allReactions({
      'minute-passed': [(event, deed) => fires.onMinute(event, deed), (event, deed) => cooking.onMinute(event, deed)],
      'cook-changed': [(event, deed) => cooking.onCook(event, deed)],
      'food-recorded': [(event, deed) => cooking.onRecorded(event, deed)],
      'food-judged': [(event, deed) => alarms.onFoodJudged(event, deed)],
    }),
  );
});
afterAll(async () => {
  await quiet();
  await night.close();
});

/** Until nobody looks at food any more. */
const quiet = async () => {
  await night.house.settle();
  await night.house.app.get(Watch).idle();
  await night.house.settle();
};
const get = (path: string) => request(night.house.app.getHttpServer()).get(`/api${path}`);
const course = async (id: CookId): Promise<CookCourse> => cookCourse.parse((await get(`/cooks/${id}/course`).expect(200)).body);
const alarmsOf = async (id: CookId) => alarmView.array().parse(await night.house.app.get(Alarms).view(night.house.database.manager, night.house.yardId)).filter(({ cookId }) => cookId === id);
const log = (entries: readonly object[], more: object = {}) => night.send('/food-log', { entries, ...more });
const reading = (cookId: CookId, tempC: number, stage: FoodEntryView['stage'] = 'cooking', at = toIso(night.house.now)) => ({ kind: 'reading', cookId, at, stage, tempC });
async function cookOn(more: object = {}): Promise<CookId> {
  const id = randomUUID() as CookId;
  await night.post('/cooks', { cook: { id, cut: 'Brisket', shape: 'slab', pieces: 6, weightKg: 37.8, serviceId: null, comesOffAt: null, ...more } });
  await night.post('/placements', { cookId: id, lies: [{ pitId: night.pits[0], zone: 1, pieces: 6 }] });
  await quiet();
  return id;
}
const whatIf = (id: CookId, change: object) => request(night.house.app.getHttpServer()).post(`/api/cooks/${id}/what-if`).send({ change });
const forecastOf = async (id: CookId) => (await night.house.app.get(Food).cooks(night.house.database.manager, night.house.yardId, night.house.now)).find((cook) => cook.id === id)?.forecast;
const hoursAway = (iso: string | null | undefined) => (fromIso(iso!) - night.house.now) / 3600;

describe('the done time of a cook', () => {
  it('is forecast as soon as it lies on a pit, as a band, and again at every tenth minute', async () => {
    const id = await cookOn();
    const first = (await forecastOf(id))!;
    expect(first).toMatchObject({ phase: 'warming', problem: null });
    expect(hoursAway(first.p50At)).toBeGreaterThan(7);
    expect(hoursAway(first.p50At)).toBeLessThan(16);
    expect(fromIso(first.p90At!) - fromIso(first.p10At!)).toBeGreaterThan(2 * 0.14 * (fromIso(first.p50At!) - night.house.now));
    await night.minutes(9);
    await quiet();
    const madeAt = (await forecastOf(id))!.madeAt;
    await night.minutes(11);
    await quiet();
    expect(fromIso((await forecastOf(id))!.madeAt)).toBeGreaterThan(fromIso(madeAt));
  });

  it('a cook of a cut that nobody knows has no forecast, and its page says so', async () => {
    const id = await cookOn({ cut: 'Something new' });
    expect(await forecastOf(id)).toBeUndefined();
    expect(await course(id)).toMatchObject({ cut: null, core: null, findings: [] });
    expect((await whatIf(id, { what: 'no-wrap' }).expect(409)).body.code).toBe('cook-not-on');
  });

  it('readings correct it; one that reads the pit is kept, marked, and moves nothing', async () => {
    const id = await cookOn();
    const onAt = fromIso((await course(id)).cook.onAt!);
    const piece = truePiece({ cut: cutByCode('brisket')!, pieceKg: 6.3, onAt, air: { from: onAt, stepS: 3600, tempC: [121] }, seed: 1 }, { pace: 0.15 }, 1200);
    night.house.now = later(onAt, 5 * 3600);
    const seen = piece.readings.filter(({ at }) => at <= night.house.now);
    const before = (await forecastOf(id))!;
    await log(seen.map(({ at, tempC }) => reading(id, tempC, 'cooking', toIso(at)))).expect(201);
    await quiet();
    const after = (await forecastOf(id))!;
    expect(Math.abs(fromIso(after.p50At!) - piece.doneAt!)).toBeLessThan(Math.abs(fromIso(before.p50At!) - piece.doneAt!));
    night.house.now = later(night.house.now, 1200);
    // Nobody has fed this fire for hours: its air has come down, and a probe that was pulled out reads it.
    const [air] = await night.rows<{ temp_c: number }>('fire_estimate', 'at desc');
    await log([reading(id, air!.temp_c)]).expect(201);
    await quiet();
    const shown = await course(id);
    expect(shown.log.at(-1)).toMatchObject({ verdict: 'reads-pit-air' });
    expect(new Set(shown.log.slice(0, -1).map(({ verdict }) => verdict))).toEqual(new Set(['used']));
    expect(shown.core!.p50.length).toBeGreaterThan(20);
  });

  it('one that is moved keeps the air that it had: its past stays as it was reckoned, to the last bit', async () => {
    const id = await cookOn({ cut: 'Sausage', shape: 'link', weightKg: 1.2 });
    await night.minutes(30);
    await quiet();
    const every5Minutes = async () => {
      const { core } = await course(id);
      return [0, 300, 600, 900, 1200, 1500].map((s) => core!.p50[s / core!.stepS]);
    };
    const before = await every5Minutes();
    // Nobody has fed this fire for hours: the links warm slowly.
    expect(before[5]).toBeGreaterThan(before[0]! + 10);
    await night.post('/placements', { cookId: id, lies: [{ pitId: night.pits[0], zone: 2, pieces: 6 }] });
    await night.minutes(10);
    await quiet();
    expect(await every5Minutes()).toEqual(before);
  });

  it('what a wrap now or a slump would do is answered and kept nowhere', async () => {
    const id = await cookOn();
    const rows = await night.rows('food_entry');
    const ask = async (change: object) => cookWhatIf.parse((await whatIf(id, change).expect(201)).body);
    expect((await ask({ what: 'slump', at: toIso(night.house.now), forS: 7200, byK: 30 })).middleS).toBeGreaterThan(300);
    expect((await ask({ what: 'hotter', at: toIso(night.house.now), byK: 15 })).middleS).toBeLessThan(-600);
    expect(await night.rows('food_entry')).toHaveLength(rows.length);
    await log([{ kind: 'wrapped', cookId: id, at: toIso(night.house.now), in: 'foil' }]).expect(201);
    expect((await whatIf(id, { what: 'wrap', at: toIso(night.house.now), kind: 'paper' }).expect(409)).body.code).toBe('already-wrapped');
  });
});

describe('the log', () => {
  it('keeps a batch once, with who and what; a correction is a line of its own and the old one stays readable', async () => {
    const id = await cookOn();
    night.house.now = later(night.house.now, 3600);
    const command = { key: randomUUID(), entries: [reading(id, 94)] };
    for (let i = 0; i < 2; i++) expect((await night.send('/food-log', command).expect(201)).body).toEqual({ kept: 1 });
    const [wrong] = (await course(id)).log;
    await log([{ ...reading(id, 49), corrects: wrong!.id, note: 'read in the wrong row' }]).expect(201);
    const after = (await course(id)).log;
    expect(after.map(({ tempC, corrected, corrects, personId, byProbe }) => ({ tempC, corrected, corrects, personId, byProbe }))).toEqual([
      { tempC: 94, corrected: true, corrects: null, personId: night.person, byProbe: false },
      { tempC: 49, corrected: false, corrects: wrong!.id, personId: night.person, byProbe: false },
    ]);
    expect(after[0]!.verdict).toBeNull();
  });

  it('an unknown cook, a line that is not there, a wrap by a gateway and a temperature of a forge are refused', async () => {
    const id = await cookOn();
    expect((await log([reading(randomUUID() as CookId, 20)]).expect(404)).body.code).toBe('cook-unknown');
    expect((await log([{ ...reading(id, 20), corrects: randomUUID() }]).expect(404)).body.code).toBe('food-entry-unknown');
    expect((await log([reading(id, 900)]).expect(400)).body.fields[0].path).toBe('entries.0.tempC');
    const person = night.house.actor!;
    night.house.actor = { ...person, device: { ...person.device, kind: 'gateway' } };
    expect((await log([{ kind: 'wrapped', cookId: id, at: toIso(night.house.now), in: 'foil' }]).expect(403)).body.code).toBe('not-allowed');
    await log([reading(id, 12)]).expect(201);
    night.house.actor = person;
    expect((await course(id)).log.at(-1)).toMatchObject({ tempC: 12, byProbe: true });
  });

  it('a device whose clock is fast is corrected', async () => {
    const id = await cookOn();
    const fast = (seconds: number) => toIso(later(night.house.now, 2700 - seconds));
    await log([{ ...reading(id, 10), at: fast(60) }], { sentAt: fast(0) }).expect(201);
    expect(fromIso((await course(id)).log[0]!.at)).toBe(night.house.now - 60);
  });
});

describe('limits', () => {
  it('a first stage of cooling that will be missed raises its alarm before it is too late, and what was done ends a missed one', async () => {
    const id = await cookOn();
    night.house.now = epochS(night.house.now + 11 * 3600);
    await log([reading(id, 96)]).expect(201);
    await night.post(`/cooks/${id}/off`, { offAt: toIso(night.house.now), yieldKg: 22 });
    const from = night.house.now;
    for (const [minutes, tempF] of [[0, 150], [20, 141], [40, 133], [60, 126]] as const) {
      night.house.now = later(from, minutes * 60);
      await log([reading(id, (tempF - 32) / 1.8, 'cooling')]).expect(201);
    }
    await quiet();
    const [alarm] = await alarmsOf(id);
    expect(alarm).toMatchObject({ kind: 'food-limit', limit: 'cooling', state: 'unacknowledged', longestShelfS: null });
    expect((await night.send(`/alarms/${alarm!.id}/shelve`, { forS: 60 }).expect(409)).body.code).toBe('alarm-not-shelvable');
    expect(await alarmsOf(id)).toEqual([alarm]);
    const finding = (await course(id)).findings.find(({ limit }) => limit === 'cooling')!;
    expect(finding).toMatchObject({ outcome: 'at-risk', section: '3-501.14(A)', edition: '2022', remedies: ['cut-smaller', 'ice-bath', 'shallow-pans', 'move-to-colder', 'reheat-to-limit'] });
    expect(fromIso(finding.runsOutAt!)).toBeGreaterThan(later(night.house.now, 3600));
    night.house.now = later(from, 200 * 60);
    await log([reading(id, (90 - 32) / 1.8, 'cooling')]).expect(201);
    await quiet();
    expect((await course(id)).findings.find(({ limit }) => limit === 'cooling')).toMatchObject({ outcome: 'missed', answered: false });
    expect(await alarmsOf(id)).toHaveLength(1);
    await log([{ kind: 'action', cookId: id, at: toIso(night.house.now), action: 'discard', limit: 'cooling', note: 'two pieces thrown away' }]).expect(201);
    await quiet();
    expect((await course(id)).findings.find(({ limit }) => limit === 'cooling')).toMatchObject({ answered: true });
    expect((await alarmsOf(id)).map(({ state }) => state)).toEqual(['returned-unacknowledged']);
  });

  it('a cooling that is not read any more calls while half of its time is left, and says to measure it', async () => {
    const id = await cookOn();
    night.house.now = later(night.house.now, 11 * 3600);
    await log([reading(id, 96)]).expect(201);
    await night.post(`/cooks/${id}/off`, { offAt: toIso(night.house.now), yieldKg: 22 });
    const from = night.house.now;
    for (const [minutes, tempF] of [[0, 136], [15, 112], [30, 94]] as const) {
      night.house.now = later(from, minutes * 60);
      await log([reading(id, (tempF - 32) / 1.8, 'cooling')]).expect(201);
    }
    await quiet();
    expect(await alarmsOf(id)).toEqual([]);
    night.house.now = later(from, 80 * 60);
    await night.minutes(12);
    await quiet();
    expect(await alarmsOf(id)).toMatchObject([{ kind: 'food-limit', limit: 'cooling', state: 'unacknowledged' }]);
    const finding = (await course(id)).findings.find(({ limit }) => limit === 'cooling')!;
    expect(finding).toMatchObject({ outcome: 'at-risk', remedies: ['measure-now', 'cut-smaller', 'ice-bath', 'shallow-pans', 'move-to-colder', 'reheat-to-limit'] });
    expect(hoursAway(finding.runsOutAt)).toBeGreaterThan(0.4);
  });

  it('a record that keeps them raises nothing: cooked, held, each with what was measured against which section', async () => {
    const id = await cookOn();
    night.house.now = later(night.house.now, 10 * 3600);
    await log([reading(id, 95)]).expect(201);
    await night.post(`/cooks/${id}/off`, { offAt: toIso(night.house.now) });
    for (const tempC of [85, 78, 72]) {
      night.house.now = later(night.house.now, 3600);
      await log([reading(id, tempC, 'holding')]).expect(201);
    }
    await quiet();
    const { findings } = await course(id);
    expect(findings.filter(({ limit }) => limit !== 'roast-oven').map(({ limit, outcome }) => [limit, outcome])).toEqual([['cooking', 'met'], ['come-up', 'met'], ['hot-hold', 'met']]);
    expect(JSON.stringify(findings)).not.toMatch(/\bsafe|compliant/i);
    expect(await alarmsOf(id)).toEqual([]);
  });

  it('own values are kept when they are stricter and refused when they ask less', async () => {
    const usual = foodLimits.parse((await get('/food-limits').expect(200)).body);
    const answer = await night.send('/food-limits', { limits: { ...usual, own: { ...usual.own, hotHoldC: 50 } } }).expect(409);
    expect(answer.body).toMatchObject({ code: 'laxer-than-code', values: { field: 'hotHoldC', printed: '135 °F (57 °C) or above' } });
    await night.post('/food-limits', { limits: { ...usual, edition: 'food-code-2013', own: { ...usual.own, hotHoldC: 60 } } });
    expect((await get('/food-limits').expect(200)).body).toMatchObject({ edition: 'food-code-2013', own: { hotHoldC: 60 } });
    await night.post('/food-limits', { limits: usual });
  });
});

describe('after the pit', () => {
  const after = (id: CookId, more: object = {}) =>
    request(night.house.app.getHttpServer()).post(`/api/cooks/${id}/after`).send({ holdIn: 'insulated-box', holdS: 4 * 3600, coolIn: 'moving-chiller', sliceM: 0.05, ...more });
  it('says how far the core still rises, how long it stays hot and when to cut it, before and after it came off, and keeps nothing', async () => {
    const id = await cookOn();
    const before = afterPitView.parse((await after(id).expect(201)).body);
    expect(before.offAt).toBe((await forecastOf(id))!.p50At);
    expect(before.peakC).toBeGreaterThan(before.leavesC);
    expect(before.cool.section).toBe('3-501.14(A)');
    expect(before.cool.advice).not.toBe('cools-whole');
    night.house.now = later(night.house.now, 6 * 3600);
    await night.post(`/cooks/${id}/off`, { offAt: toIso(night.house.now) });
    const off = afterPitView.parse((await after(id).expect(201)).body);
    expect(off.offAt).toBe(toIso(night.house.now));
    expect(off.leavesC).toBeLessThan(before.leavesC);
  });
  it('is held against the set of limits that the yard has chosen', async () => {
    const id = await cookOn();
    const usual = foodLimits.parse((await get('/food-limits').expect(200)).body);
    await night.post('/food-limits', { limits: { ...usual, edition: 'fsis-2021-option-1' } });
    expect(afterPitView.parse((await after(id).expect(201)).body).cool.section).toBe('Appendix B option 1');
    await night.post('/food-limits', { limits: usual });
  });
  it('refuses a cook that lay nowhere, one that nobody knows, and pieces of no thickness', async () => {
    const id = randomUUID() as CookId;
    await night.post('/cooks', { cook: { id, cut: 'Brisket', shape: 'slab', pieces: 2, weightKg: 12, serviceId: null, comesOffAt: null } });
    expect((await after(id).expect(409)).body).toMatchObject({ code: 'cook-not-on' });
    expect((await after(randomUUID() as CookId).expect(404)).body).toMatchObject({ code: 'cook-unknown' });
    await after(id, { sliceM: 0 }).expect(400);
  });
});

describe('cuts', () => {
  it('a yard starts with cuts and their sources, changes one, adds one', async () => {
    const cuts = cutSettings.array().parse((await get('/cuts').expect(200)).body);
    const brisket = cuts.find(({ code }) => code === 'brisket')!;
    expect(brisket.source).toContain('USDA');
    await night.post('/cuts', { cut: { ...brisket, portionKg: 0.2, source: 'our own scale' } });
    await night.post('/cuts', { cut: { ...brisket, code: 'chuck-roll', name: 'Chuck roll' } });
    const after = cutSettings.array().parse((await get('/cuts').expect(200)).body);
    expect(after).toHaveLength(cuts.length + 1);
    expect(after.find(({ code }) => code === 'brisket')).toMatchObject({ portionKg: 0.2, source: 'our own scale' });
    await night.post('/cuts', { cut: brisket });
  });
  it.each([
    { what: 'a weight of 0', more: { usualKg: 0 }, field: 'usualKg' }, { what: 'no done rule', more: { done: { coreTempC: null, tenderHoursAt90: null } }, field: 'done' },
    { what: 'a wrap after done', more: { wrap: { kind: 'foil', atCoreC: 97 } }, field: 'wrap.atCoreC' }, { what: 'a composition of half', more: { composition: { waterFrac: 0.3, proteinFrac: 0.1, fatFrac: 0.1, ashFrac: 0 } }, field: 'composition' },
  ])('$what is refused and named', async ({ more, field }) => {
    const [cut] = cutSettings.array().parse((await get('/cuts').expect(200)).body);
    expect((await night.send('/cuts', { cut: { ...cut!, ...more } }).expect(409)).body).toMatchObject({ code: 'cut-not-valid', values: { field } });
  });
});

it('a finished cook teaches its cut and its pit, once', async () => {
  const id = await cookOn({ cut: 'Pork shoulder', shape: 'round', weightKg: 24 });
  const onAt = fromIso((await course(id)).cook.onAt!);
  const piece = truePiece({ cut: cutByCode('pork-shoulder')!, pieceKg: 4, onAt, air: { from: onAt, stepS: 3600, tempC: [121] }, seed: 1 }, { pace: 0.2 }, 1800);
  night.house.now = piece.doneAt!;
  await log(piece.readings.filter(({ at }) => at <= piece.doneAt!).map(({ at, tempC }) => reading(id, tempC, 'cooking', toIso(at)))).expect(201);
  await night.post(`/cooks/${id}/off`, { offAt: toIso(piece.doneAt!) });
  await quiet();
  const learned = () => night.rows<{ kind: string; ref: string; effects: { cooks: number } }>('food_learned', 'kind, ref');
  const first = (await learned()).filter(({ ref }) => ref === 'pork-shoulder');
  expect(first).toMatchObject([{ kind: 'cut', effects: { cooks: 1 } }]);
  await night.minutes(10);
  await quiet();
  expect((await learned()).filter(({ ref }) => ref === 'pork-shoulder')).toEqual(first);
});
