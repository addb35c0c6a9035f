import { later, type LotId, type PitId, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Deed } from '../platform/index.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { WoodyardModule, WoodyardReactions } from './index.js';

let house: TestHouse;
const [bess, nell] = [randomUUID() as PitId, randomUUID() as PitId];
const lots = { dry: randomUUID() as LotId, wet: randomUUID() as LotId, long: randomUUID() as LotId };
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send({ key: randomUUID(), ...body });
const woodyard = async () => (await request(house.app.getHttpServer()).get('/api/woodyard').expect(200)).body;
const pit = (id: PitId, name: string, xM: number) => ({
  pit: {
    id, name, xM, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61, fireboxDiameterM: 0.61,
    steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 1 }, { lengthM: 1 }], probes: [], band: { lowC: 118, highC: 124 }, retired: false,
  },
});
const buy = (id: LotId, name: string, pieces: number, more: object = {}, beside: object = {}) =>
  post('/lots', { lot: { id, name, species: 'white-oak', lengthM: 0.36, thicknessM: 0.092, moisture: 0.13, boughtAt: toIso(later(house.now, -300 * 86_400)), priceCents: pieces * 60, ...more }, pieces, ...beside });
const hauls = async () => ((await house.database.query(`select pit_id, note, done_at from task where kind = 'haul' order by pit_id, due_at`)) as { pit_id: string; note: string }[]);

beforeAll(async () => {
  house = await openTestHouse([WoodyardModule]);
  await post('/pits', pit(bess, 'Bess', 3)).expect(201);
  await post('/pits', pit(nell, 'Nell', 12)).expect(201);
});
afterAll(() => house.close());

it('no pit burns: there is no pull to make, and the yard needs nothing', async () => {
  expect((await post('/pulls', {}).expect(409)).body.code).toBe('nothing-burns');
  expect(await woodyard()).toMatchObject({ lots: [], pull: null, isClimateAssumed: true, yard: { state: 'enough', neededKg: 0 } });
});

it('a delivery that does not add up is pointed out and taken in all the same', async () => {
  expect((await buy(lots.dry, 'West oak', 80).expect(201)).body).toEqual({ done: true, remarks: [] });
  const { body } = await buy(lots.wet, 'New oak', 200, { moisture: 0.33, priceCents: 0 }, { also: [{ by: 'cords', cords: 1 }] }).expect(201);
  expect(body.remarks.map(({ code }: { code: string }) => code)).toEqual(['measures-disagree', 'no-price', 'too-wet-to-burn-now']);
  expect((await buy(lots.long, 'Long oak', 60, { lengthM: 0.52 }).expect(201)).body.remarks).toEqual([]);
});

it('a meter reading is corrected for cold wood, over fibre saturation it is at least, and nonsense is refused', async () => {
  const at = { measuredAt: toIso(later(house.now, -3600)), basis: 'dry', face: 'inside' };
  const cold = await post(`/lots/${lots.dry}/meter`, { ...at, shownPercent: 12, woodTempC: 2 }).expect(201);
  expect(cold.body.moisture).toBeGreaterThan(0.13);
  expect(cold.body.remarks).toEqual([]);
  expect((await post(`/lots/${lots.wet}/meter`, { ...at, shownPercent: 41, woodTempC: null }).expect(201)).body).toMatchObject({ atLeast: true, remarks: ['above-fibre-saturation', 'wood-temperature-unknown'] });
  expect((await post(`/lots/${lots.wet}/meter`, { ...at, shownPercent: 75, basis: 'wet', woodTempC: null }).expect(409)).body.code).toBe('not-a-moisture');
  expect((await post(`/lots/${lots.wet}/meter`, { ...at, shownPercent: 140, woodTempC: null }).expect(400)).body.fields[0].path).toBe('shownPercent');
});

it('two people recount at once: the second is told that the book moved, and nothing of the first is lost', async () => {
  const count = (found: number) => post('/recounts', { lotId: lots.dry, pitId: null, found, reason: 'counted', book: 80 });
  await count(78).expect(201);
  const { body } = await count(77).expect(409);
  expect(body).toMatchObject({ code: 'counted-meanwhile', values: { before: 80, now: 78 } });
  await post('/recounts', { lotId: lots.dry, pitId: null, found: -1, reason: 'x' }).expect(400);
});

it('what is ready comes first, and wet oak has a day with a spread', async () => {
  const { lots: shown } = await woodyard();
  expect(shown[0]).toMatchObject({ state: 'ready' });
  const wet = shown.find(({ lotId }: { lotId: string }) => lotId === lots.wet);
  expect(wet.state).toBe('not-yet');
  expect(wet.earliestAt < wet.readyAt && wet.readyAt < wet.latestAt).toBe(true);
  expect(wet.readings).toHaveLength(1);
});

it('the climate of the yard is kept and moves the day', async () => {
  const before = (await woodyard()).lots.find(({ lotId }: { lotId: string }) => lotId === lots.wet).readyAt;
  await post('/climate', { months: Array.from({ length: 12 }, () => ({ tempC: 28, humidityFrac: 0.35 })) }).expect(201);
  const after = await woodyard();
  expect(after.isClimateAssumed).toBe(false);
  expect(after.lots.find(({ lotId }: { lotId: string }) => lotId === lots.wet).readyAt < before).toBe(true);
  await post('/climate', { months: [] }).expect(400);
});

it('a pull gives every pit its wood, none of it wet, and puts the hauls into the night', async () => {
  const start = house.now;
  await post('/shifts', {
    id: randomUUID(), startsAt: toIso(start), endsAt: toIso(later(start, 10 * 3600)),
    people: [{ personId: house.actor!.person!.id, startsAt: toIso(start), endsAt: toIso(later(start, 10 * 3600)), breaks: [] }],
    pits: [bess, nell].map((pitId) => ({ pitId, band: { lowC: 118, highC: 124 }, lightAt: toIso(start) })),
  }).expect(201);
  const { body } = await post('/pulls', {}).expect(201);
  expect(body.loads.every(({ shortJ }: { shortJ: number }) => shortJ === 0)).toBe(true);
  expect(body.loads.flatMap(({ wood }: { wood: { lotId: string }[] }) => wood).some(({ lotId }: { lotId: string }) => lotId === lots.wet)).toBe(false);
  expect(body.gapFrac).toBeLessThan(0.05);
  const tasks = await hauls();
  expect(new Set(tasks.map(({ pit_id }) => pit_id))).toEqual(new Set([bess, nell]));
  expect(tasks.every(({ note }) => /^\d+ × (West|Long) oak/.test(note))).toBe(true);
  expect((await woodyard()).pull.loads).toHaveLength(body.loads.length);
});

it('offcuts that lie there are pulled for lighting, to be taken along: they are no haul and cost nothing', async () => {
  await post('/offcut-recounts', { lotId: lots.long, found: 9, reason: 'lay behind the shed', book: 0 }).expect(201);
  const { body } = await post('/pulls', {}).expect(201);
  const offcuts = body.loads.flatMap(({ pitId, wood }: { pitId: string; wood: { isOffcut: boolean }[] }) => wood.filter(({ isOffcut }) => isOffcut).map((one) => ({ pitId, ...one })));
  expect(offcuts.length).toBeGreaterThan(0);
  expect(offcuts.every(({ lotId, isOnCart }: { lotId: string; isOnCart: boolean }) => lotId === lots.long && !isOnCart)).toBe(true);
  const taken = offcuts.reduce((sum: number, { pieces }: { pieces: number }) => sum + pieces, 0);
  expect(taken).toBeLessThanOrEqual(9);
  const open = (await hauls()).filter(({ note }) => note !== null);
  const hauled = open.reduce((sum, { note }) => sum + [...note.matchAll(/(\d+) ×/g)].reduce((all, [, pieces]) => all + Number(pieces), 0), 0);
  const told = body.loads.flatMap(({ wood }: { wood: { isOffcut: boolean; isOnCart: boolean; pieces: number }[] }) => wood).filter(({ isOffcut, isOnCart }: { isOffcut: boolean; isOnCart: boolean }) => !isOffcut && !isOnCart).reduce((sum: number, { pieces }: { pieces: number }) => sum + pieces, 0);
  expect(hauled).toBe(told);
});

it('long wood under food at the fire end stands on the trim list with its cuts and short offcuts', async () => {
  await post('/wood-moves', { lotId: lots.long, pitId: bess, pieces: 5, way: 'pull' }).expect(201);
  const { trim } = await woodyard();
  const line = trim.find(({ pitId, lotId }: { pitId: string; lotId: string }) => pitId === bess && lotId === lots.long);
  expect(line.splits).toBeGreaterThanOrEqual(5);
  expect(line.cuts).toBe(line.splits);
  expect(line.short).toBe(true);
});

it('the same key again gives the same pull and no second hauls', async () => {
  const key = randomUUID();
  const first = (await post('/pulls', { key }).expect(201)).body;
  const count = (await hauls()).length;
  expect((await post('/pulls', { key }).expect(201)).body).toEqual(first);
  expect((await hauls()).length).toBe(count);
});

it('promised wood that is gone is noticed after the next check: the pull is balanced again and says why', async () => {
  await post('/recounts', { lotId: lots.dry, pitId: null, found: 6, reason: 'a row was rotten' }).expect(201);
  const react = () => house.database.transaction((em) => house.app.get(WoodyardReactions).onCheckRecorded({ kind: 'check-recorded', pitId: bess, checkId: randomUUID() }, { em, yardId: house.yardId, now: house.now, tell: () => undefined } as unknown as Deed));
  await react();
  const after = await woodyard();
  expect(after.pull.because).toMatch(/stock-gone|runs-short/);
  expect(after.pull.changes.length).toBeGreaterThan(0);
  expect(after.repull).toBeNull(); // what is balanced already asks for no balance
  const made = after.pull.madeAt;
  house.now = later(house.now, 60);
  await react(); // within half an hour it does not look again
  expect((await woodyard()).pull.madeAt).toBe(made);
});

it('food that goes on a pit brings the kitchen\'s wish: the pull is balanced again for it', async () => {
  const hickory = randomUUID() as LotId;
  await buy(hickory, 'Creek hickory', 120, { species: 'shagbark-hickory' }).expect(201);
  const cookId = randomUUID();
  await post('/cooks', { cook: { id: cookId, cut: 'Brisket', shape: 'slab', pieces: 4, weightKg: 26, serviceId: null, comesOffAt: null, mix: [{ species: 'shagbark-hickory', leastFrac: 0.5, mostFrac: 1 }] } }).expect(201);
  await post('/placements', { cookId, lies: [{ pitId: nell, zone: 0, pieces: 4 }] }).expect(201);
  await house.database.transaction((em) => house.app.get(WoodyardReactions).onCook({ kind: 'cook-changed', cookId: cookId as never }, { em, yardId: house.yardId, now: house.now, tell: () => undefined } as unknown as Deed));
  const { pull } = await woodyard();
  expect(pull.because).toBe('mix-asked');
  const loads = pull.loads.filter(({ pitId }: { pitId: string }) => pitId === nell);
  expect(loads.flatMap(({ wood }: { wood: { lotId: string }[] }) => wood).some(({ lotId }: { lotId: string }) => lotId === hickory)).toBe(true);
  expect(pull.changes.some(({ pitId, lotId, because }: { pitId: string; lotId: string; because: string }) => pitId === nell && lotId === hickory && because === 'mix-asked')).toBe(true);
});
