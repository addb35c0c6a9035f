import type { INestApplication } from '@nestjs/common';
import { type EventKind, LIVE, type LiveBeat, type LiveChange, liveBeat, liveChange, type Me, type YardState, yardState } from '@stokehold/domain/contract';
import type { PersonId, YardId } from '@stokehold/domain/quantity';
import { randomBytes, randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from 'pg';
import { io, type Socket } from 'socket.io-client';
import { DataSource } from 'typeorm';
import { afterAll, afterEach, beforeAll, expect, inject, it, vi } from 'vitest';
import { openHouse } from '../house.js';
import { Enrolment, FirstRunToken, Identity } from '../identity/index.js';
import { Outbox } from '../platform/index.js';
import { StateOf } from './state-of.service.js';

const name = `stokehold_test_${randomBytes(6).toString('hex')}`;
const dataFolder = mkdtempSync(join(tmpdir(), 'stokehold-live-'));
const houses: { app: INestApplication; at: string }[] = [];
const screens: Socket[] = [];
let cookie: string;
let yardId: YardId;
/** All that was told is carried. */
const settle = () => houses[0]!.app.get(Outbox).drain(yardId);

async function onServer(sql: string): Promise<void> {
  const client = new Client({ connectionString: inject('databaseServer') });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

async function openOne(): Promise<{ app: INestApplication; at: string }> {
  const url = new URL(inject('databaseServer'));
  url.pathname = `/${name}`;
  const app = await openHouse({ databaseUrl: url.href, workers: 0, connections: 5, dataFolder });
  await app.listen(0, '127.0.0.1');
  const { port } = app.getHttpServer().address() as { port: number };
  const house = { app, at: `http://127.0.0.1:${port}` };
  houses.push(house);
  return house;
}

const YARD = {
  name: 'Saltmarsh Yard', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 40, planHeightM: 25, planTopDeg: 0,
  woodPlace: { xM: 20, yM: 24 }, walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
};

beforeAll(async () => {
  await onServer(`create database ${name}`);
  const { app, at } = await openOne();
  const token = await app.get(FirstRunToken).issue();
  const answer = await fetch(`${at}/api/first-run`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ token, yard: YARD, manager: { name: 'Renske', pin: '480213', language: 'en' }, deviceName: 'Tablet' }),
  });
  expect(answer.status).toBe(201);
  yardId = ((await answer.json()) as Me).yard.id;
  await settle();
  cookie = answer.headers.getSetCookie().map((set) => set.split(';')[0]).join('; ');
});
afterEach(() => void screens.splice(0).forEach((screen) => screen.close()));
afterAll(async () => {
  for (const { app } of houses) await app.close();
  await onServer(`drop database if exists ${name} with (force)`);
  rmSync(dataFolder, { recursive: true, force: true });
});

interface Screen {
  readonly socket: Socket;
  readonly changes: LiveChange[];
  readonly beats: LiveBeat[];
}
/** Opens a screen; what arrives is held to the contract. */
async function openScreen(at = houses[0]!.at, headers: Record<string, string> = { cookie }): Promise<Screen> {
  const socket = io(at, { path: LIVE.path, transports: ['websocket'], reconnection: false, extraHeaders: headers, forceNew: true });
  screens.push(socket);
  const screen: Screen = { socket, changes: [], beats: [] };
  socket.on(LIVE.change, (message: unknown) => screen.changes.push(liveChange.strict().parse(message)));
  socket.on(LIVE.beat, (message: unknown) => screen.beats.push(liveBeat.strict().parse(message)));
  await new Promise<void>((done, failed) => void socket.once('connect', done).once('connect_error', failed));
  return screen;
}

async function until(holds: () => boolean): Promise<void> {
  for (const end = Date.now() + 10_000; Date.now() < end; await pause(10)) if (holds()) return;
  expect(holds()).toBe(true);
}
async function state(at = houses[0]!.at): Promise<YardState> {
  return yardState.strict().parse(await (await fetch(`${at}/api/state`, { headers: { cookie } })).json());
}
async function send(path: string, body: object, at = houses[0]!.at): Promise<void> {
  const answer = await fetch(`${at}/api${path}`, {
    method: 'POST',
    headers: { cookie, 'content-type': 'application/json' },
    body: JSON.stringify({ key: randomUUID(), ...body }),
  });
  expect([answer.status, await answer.text()]).toEqual([201, expect.any(String)]);
}
const wind = (windMPerS: number) => ({ seenAt: `${new Date().toISOString().slice(0, 19)}Z`, windMPerS, gustMPerS: windMPerS + 1, fromDeg: 200, ambientTempC: 8, rainFrac: 0 });
const lot = (nth: number) => ({
  lot: { id: randomUUID(), name: `Lot ${nth}`, species: 'white-oak', lengthM: 0.5, thicknessM: 0.12, moisture: 0.22, boughtAt: '2026-06-01T12:00:00Z', priceCents: 30_000 },
  pieces: 200,
});

/** What a board does with a change, by the contract's own words: whole slices in place of the old ones, pits one by one. */
function put(before: YardState, { seq, clock, changed, pitsGone = [] }: LiveChange): YardState {
  const { pits = [], ...slices } = changed;
  const kept = before.pits.filter(({ pit }) => ![...pitsGone, ...pits.map((view) => view.pit.id)].includes(pit.id));
  return { ...before, ...(slices as Partial<YardState>), pits: [...kept, ...pits], seq, clock };
}
const withoutClock = ({ clock: _clock, ...rest }: YardState) => rest;

it('a screen hears a beat each second, and the change that a command made', async () => {
  const screen = await openScreen();
  const before = await state();
  await send('/weather', wind(3));
  await until(() => screen.changes.length > 0 && screen.beats.length > 1);
  expect(screen.changes[0]).toMatchObject({ seq: before.seq + 1, event: 'weather-recorded' satisfies EventKind, changed: { weather: { windMPerS: 3, gustMPerS: 4 } } });
  expect(screen.beats.at(-1)?.seq).toBe(before.seq + screen.changes.length);
});

it('a state fetched at any moment, with the changes after its number, is the state at the end', async () => {
  const screen = await openScreen();
  const fetched: YardState[] = [];
  let sending = true;
  const fetching = (async () => {
    while (sending) fetched.push(await state());
  })();
  await Promise.all(Array.from({ length: 12 }, (_, nth) => Promise.all([send('/weather', wind(nth)), send('/lots', lot(nth)), send('/yard', { yard: { ...YARD, name: `Yard ${nth}` } })])));
  sending = false;
  await fetching;
  await settle();
  const last = await state();
  await until(() => screen.changes.at(-1)?.seq === last.seq);
  const numbers = screen.changes.map(({ seq }) => seq);
  expect(numbers).toEqual(numbers.map((_, nth) => numbers[0]! + nth));
  expect(fetched.length).toBeGreaterThan(1);
  for (const start of fetched) {
    const end = screen.changes.filter(({ seq }) => seq > start.seq).reduce(put, start);
    expect(withoutClock(end)).toEqual(withoutClock(last));
  }
});

it('what came in through another process on the same database reaches the screen too', async () => {
  const other = await openOne();
  const screen = await openScreen();
  const { seq } = await state();
  await send('/weather', wind(11), other.at);
  await until(() => screen.changes.some((change) => change.seq === seq + 1 && change.changed.weather?.windMPerS === 11));
});

it('a stranger, and a page of another address, get no live connection', async () => {
  const { at } = houses[0]!;
  await expect(openScreen(at, {})).rejects.toThrow('not-signed-in');
  await expect(openScreen(at, { cookie, origin: 'http://elsewhere.example' })).rejects.toThrow();
  await expect(openScreen(at, { cookie, origin: at })).resolves.toBeDefined();
});

/** Somebody of the crew, signed in on a phone of their own. */
async function crewOnPhone(name: string): Promise<{ readonly id: string; readonly deviceId: string; readonly cookie: string }> {
  const { app } = houses[0]!;
  const id = randomUUID();
  await send('/crew', { person: { id, name, role: 'crew', language: 'en', skills: [], rateCentsPerHour: 2200, left: false }, pin: '736201' });
  const enrolment = app.get(Enrolment);
  const em = app.get(DataSource).manager;
  const { deviceId, token } = await enrolment.addDevice(em, { yardId, kind: 'hand', name });
  return { id, deviceId, cookie: `stokehold_device=${token}; stokehold_session=${await enrolment.beginSession(em, deviceId, id as PersonId)}` };
}
/** Beats that a screen still heard until it was cut off; one comes each second. */
async function beatsUntilCut({ socket, beats }: Screen): Promise<number> {
  const before = beats.length;
  await until(() => !socket.connected);
  return beats.length - before;
}

it.each([
  { who: 'somebody who left', end: ({ id }: { id: string }) => send('/crew', { person: { id, name: 'somebody who left', role: 'crew', language: 'en', skills: [], rateCentsPerHour: 2200, left: true } }) },
  { who: 'a device that was revoked', end: ({ deviceId }: { deviceId: string }) => send(`/devices/${deviceId}/revoke`, {}) },
  { who: 'a session that the manager ended', end: ({ deviceId }: { deviceId: string }) => send(`/sessions/${deviceId}/end`, {}) },
])('$who has no access any more: the next request is refused, and the open screen hears five beats more at most', async ({ who, end }) => {
  const crew = await crewOnPhone(who);
  const screen = await openScreen(houses[0]!.at, { cookie: crew.cookie });
  const kept = await openScreen();
  await end(crew);
  const asked = await fetch(`${houses[0]!.at}/api/state`, { headers: { cookie: crew.cookie } });
  expect(asked.status).toBe(401);
  expect(await beatsUntilCut(screen)).toBeLessThanOrEqual(5);
  await expect(openScreen(houses[0]!.at, { cookie: crew.cookie })).rejects.toThrow('not-signed-in');
  expect(kept.socket.connected).toBe(true);
});

it('a yard on which no screen is open is not asked for', async () => {
  const { app } = houses[0]!;
  for (const house of houses.slice(1)) await house.app.close();
  houses.splice(1);
  await (await openScreen()).socket.disconnect();
  await pause(1500);
  const stateOf = app.get(StateOf);
  const asked = [vi.spyOn(stateOf, 'since'), vi.spyOn(stateOf, 'seq'), vi.spyOn(app.get(Identity), 'actorOf')];
  await pause(5000);
  expect(asked.map(({ mock }) => mock.calls)).toEqual([[], [], []]);
  await openScreen();
  await until(() => asked.every(({ mock }) => mock.calls.length > 0));
});
