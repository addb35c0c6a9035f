import type { HouseStatus } from '@stokehold/domain/contract';
import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from 'pg';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';
import { SmallDisk } from './small-disk.js';

const SIZE_MIB = 400;

let disk: SmallDisk;
let folder: Folder;
let house: House;
beforeEach(async () => {
  [disk, folder] = [new SmallDisk(SIZE_MIB), new Folder()];
  house = await (await House.start(folder, { STOKEHOLD_DATA: disk.data })).ready();
  await house.firstRun();
  await expect.poll(() => existsSync(join(disk.data, 'room-kept-back'))).toBe(true);
});
afterEach(async () => {
  disk.empty();
  await house.end('SIGTERM');
  disk.remove();
  await folder.remove();
});

const lot = () => {
  const id = randomUUID();
  return { key: randomUUID(), pieces: 200, lot: { id, name: `Lot ${id}`, species: 'white-oak', lengthM: 0.5, thicknessM: 0.12, moisture: 0.22, boughtAt: '2026-06-01T12:00:00Z', priceCents: 30_000 } };
};
const lotsIn = async () => (await house.get<{ wood: { lots: { id: string }[] } }>('/state')).wood.lots.map(({ id }) => id);
const isShown = async () => (await fetch(`${house.at}/api/state`, { headers: { cookie: house.person.cookie } })).ok;
const diskFound = async () => (await house.get<HouseStatus>('/status')).parts.find(({ part }) => part === 'disk')!;
const statusOf = async (finding: string) => {
  const began = performance.now();
  await expect.poll(async () => (await diskFound()).finding, { interval: 100 }).toBe(finding);
  return ((performance.now() - began) / 1000).toFixed(1);
};
/** Sends until it is taken; gives how long that took, s. */
async function untilTaken(command: ReturnType<typeof lot>): Promise<number> {
  const began = performance.now();
  await expect.poll(async () => (await house.post('/lots', command)).status, { interval: 200, timeout: 60_000 }).toBe(201);
  return (performance.now() - began) / 1000;
}

/** The server's log goes on in a new file, which it has to make. */
async function newLogFiles(many: number): Promise<void> {
  const port = Number(readFileSync(join(disk.data, 'database', 'postmaster.pid'), 'utf8').split('\n')[3]);
  const client = new Client({ host: '127.0.0.1', port, user: 'stokehold', database: 'stokehold', password: readFileSync(join(disk.data, 'database-password'), 'utf8').trim() });
  client.on('error', () => undefined);
  await client.connect();
  for (let nth = 0; nth < many; nth++) await client.query(`select pg_logical_emit_message(true, 'faults', repeat('x', 1000)), pg_switch_wal()`);
  await client.end();
}

it('R3: a disk that fills up is told of from 80 and from 90 % on; full, nothing is taken in, all is shown, and with room it goes on by itself', async () => {
  const acknowledged: string[] = [];
  const refused: [number, string][] = [];
  let going = true;
  let shown = 0;
  const hand = async () => {
    for (; going; await pause(20)) {
      const next = lot();
      const answer = await house.post('/lots', next);
      if (answer.status === 201) acknowledged.push(next.lot.id);
      else refused.push([answer.status, ((await answer.json()) as { code: string }).code]);
    }
  };
  const board = async () => {
    for (; going; await pause(100)) {
      expect(await isShown()).toBe(true);
      shown += 1;
    }
  };
  const all = Promise.all([hand(), hand(), board()]);
  expect((await diskFound()).state).toBe('works');
  disk.fill(0.81);
  const at80 = await statusOf('disk-filling');
  disk.fill(0.91);
  const at90 = await statusOf('disk-nearly-full');
  expect(refused).toEqual([]);
  disk.fill(1);
  const atFull = await statusOf('disk-full');
  // What is written meanwhile, each minute and for whoever signs in, wants new files of the log; what was kept back is there for them.
  await newLogFiles(2);
  const before = shown;
  await expect.poll(() => shown).toBeGreaterThan(before + 10);
  const kept = acknowledged.length;
  disk.empty();
  const worksAfterS = await untilTaken(lot());
  going = false;
  await all;
  expect(new Set(refused.map(String))).toEqual(new Set(['507,disk-full']));
  const found = await lotsIn();
  expect(acknowledged.filter((id) => !found.includes(id))).toEqual([]);
  expect(new Set(found).size).toBe(found.length);
  expect(worksAfterS).toBeLessThan(30);
  measured('R3', `told ${at80} s after 80 %, ${at90} s after 90 %, ${atFull} s after the last byte; ${refused.length} refused with 507, shown ${shown} of ${shown} times; taken ${worksAfterS.toFixed(1)} s after room; lost 0 of ${kept}`);
});

it('R3: a database that stopped on a full disk comes up again in the room that was kept back, and shows what was kept', async () => {
  const acknowledged: string[] = [];
  const send = async () => {
    const next = lot();
    const { status } = await house.post('/lots', next);
    if (status === 201) acknowledged.push(next.lot.id);
    return status;
  };
  expect(await send()).toBe(201);
  disk.fill(1);
  // At once, before the house has looked: the server finds no room for its log, and stops.
  await expect(newLogFiles(2)).rejects.toThrow(/No space left|terminated/);
  const began = performance.now();
  await expect.poll(isShown, { interval: 100, timeout: 30_000 }).toBe(true);
  const shownAfterS = (performance.now() - began) / 1000;
  await expect.poll(send, { interval: 200 }).toBe(507);
  expect((await lotsIn()).sort()).toEqual([...acknowledged].sort());
  disk.empty();
  const worksAfterS = await untilTaken(lot());
  expect(worksAfterS).toBeLessThan(30);
  measured('R3', `a database stopped by it shows again after ${shownAfterS.toFixed(1)} s, takes in ${worksAfterS.toFixed(1)} s after room`);
});
