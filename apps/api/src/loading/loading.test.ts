import { cookSupposed, type LoadingView, loadingView, moveWeighed } from '@stokehold/domain/contract';
import { later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import { LoadingModule } from './index.js';

let house: TestHouse;
const [bess, nell, lunch, tooSoon, briskets, birds, hurried, lying] = Array.from({ length: 8 }, () => randomUUID()) as [string, string, string, string, string, string, string, string];
const post = (path: string, body: object) => request(house.app.getHttpServer()).post(`/api${path}`).send(body);
const command = (path: string, body: object) => post(path, { key: randomUUID(), ...body }).expect(201);
const hours = (h: number) => toIso(later(house.now, h * 3600));
const pit = (id: string, name: string, xM: number) => ({
  id, name, xM, yM: 4, fireEnd: 'left', fireEndHeadingDeg: 90, chamberLengthM: 2.28, chamberDiameterM: 0.762, fireboxLengthM: 0.61, fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15,
  zones: [{ lengthM: 0.7 }, { lengthM: 0.7 }, { lengthM: 0.7 }], probes: [], band: { lowC: 120, highC: 126 }, retired: false,
});
const cook = (id: string, cut: string, shape: string, pieces: number, weightKg: number, serviceId: string | null) => ({ id, cut, shape, pieces, weightKg, serviceId, comesOffAt: null });
let view: LoadingView;

beforeAll(async () => {
  house = await openTestHouse([LoadingModule]);
  await command('/pits', { pit: pit(bess, 'Bess', 3) });
  await command('/pits', { pit: pit(nell, 'Nell', 12) });
  await command('/services', { service: { id: lunch, name: 'Lunch', readyBy: hours(20), portions: 80 } });
  await command('/services', { service: { id: tooSoon, name: 'Early tray', readyBy: hours(2), portions: 10 } });
  for (const one of [cook(briskets, 'Brisket', 'slab', 4, 24, lunch), cook(birds, 'Chicken', 'bird', 8, 14, lunch), cook(hurried, 'Brisket', 'slab', 1, 6, tooSoon), cook(lying, 'Pork shoulder', 'round', 3, 12, null)]) await command('/cooks', { cook: one });
  await command('/placements', { sentAt: toIso(house.now), cookId: lying, lies: [{ pitId: bess, zone: 0, pieces: 3 }] });
  const { body } = await request(house.app.getHttpServer()).get('/api/loading').expect(200);
  view = loadingView.strict().parse(body);
}, 120_000);
afterAll(() => house.close());

it('plans the lunch from its time backwards, lights in time, and keeps its chance', () => {
  expect(view.cookPlan?.starts.map(({ cookId }) => cookId).sort()).toEqual([briskets, birds].sort());
  const [service] = view.cookPlan!.services;
  expect(service).toMatchObject({ serviceId: lunch, atRisk: false });
  expect(service!.lateFrac).toBeLessThanOrEqual(0.05);
  for (const burn of view.cookPlan!.burns) if (burn.lightAt) expect(Date.parse(burn.lightAt)).toBeLessThan(Date.parse(burn.firstOnAt));
});

it('says what lies where with its reason, also what lies there without a service', () => {
  const placings = view.pits.flatMap(({ placings: own, pitId }) => own.map((one) => ({ ...one, pitId })));
  expect(placings.filter(({ cookId }) => cookId === lying).every(({ pitId }) => pitId === bess)).toBe(true);
  expect(placings.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(4 + 8 + 3);
});

it('a service before the earliest possible time is set aside with that time and why', () => {
  const [aside] = view.setAside;
  expect(aside).toMatchObject({ serviceId: tooSoon, code: 'service-too-early', slowest: hurried });
  expect(Date.parse(aside!.earliestAt!)).toBeGreaterThan(Date.parse(hours(2)));
});

it('pieces moved by hand are weighed at once, and nothing moves', async () => {
  const own = view.pits.find(({ placings }) => placings.some(({ cookId }) => cookId === briskets))!;
  const from = own.placings.find(({ cookId }) => cookId === briskets)!;
  const body = { pitId: own.pitId, cookId: briskets, pieces: 1, fromZone: from.zone, toZone: null };
  expect(moveWeighed.parse((await post('/loading/moves/weigh', body).expect(201)).body)).toMatchObject({ moreUnplaced: 1, breaks: [] });
  expect(moveWeighed.parse((await post('/loading/moves/weigh', { ...body, pieces: 90 }).expect(201)).body).breaks.map(({ code }) => code)).toContain('pieces-wrong');
  expect((await post('/loading/moves/weigh', { ...body, pitId: randomUUID() }).expect(404)).body.code).toBe('pit-unknown');
});

it('a cook dragged two hours later shows what becomes of its service', async () => {
  const start = view.cookPlan!.starts.find(({ cookId }) => cookId === briskets)!;
  const dragged = toIso(later((Date.parse(start.latestOnAt) / 1000) as typeof house.now, 6 * 3600));
  const answer = cookSupposed.parse((await post('/cook-plan/suppose', { cookId: briskets, onAt: dragged }).expect(201)).body);
  expect(answer.services[0]!.afterLateFrac).toBeGreaterThan(answer.services[0]!.beforeLateFrac);
  expect((await post('/cook-plan/suppose', { cookId: lying, onAt: dragged }).expect(404)).body.code).toBe('cook-unknown');
});
