import { performance } from 'node:perf_hooks';
import { afterEach, expect, it } from 'vitest';
import { openBoards } from '../load/boards.mjs';
import { checkFire, lightPit, until } from '../machines/several-houses.js';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';

const BOARDS = 200;
const CHECKS = 20;
const folder = new Folder();
let house: House | undefined;
let boards: ReturnType<typeof openBoards> | undefined;
afterEach(async () => {
  boards?.close();
  await house?.end('SIGKILL');
  await folder.remove();
});

const at = (values: readonly number[], q: number) => [...values].sort((a, b) => a - b)[Math.floor(values.length * q)]!;

it('200 boards come at once, and each hears every change, in order', async () => {
  house = await (await House.start(folder)).ready();
  await house.firstRun();
  const { at: address, person } = house;
  const pitId = await lightPit(house);
  const came = performance.now();
  boards = openBoards(address, [{ boards: Array.from({ length: BOARDS }, () => ({ cookie: person.cookie })) }], () => undefined);
  const { all, open } = boards;
  await until(() => open() === BOARDS, 'all boards');
  const openS = (performance.now() - came) / 1000;
  const latencies: number[] = [];
  for (let nth = 0; nth < CHECKS; nth++) {
    const before = all.map(({ heard }) => heard.changes);
    const sent = performance.now();
    await checkFire(house, pitId);
    const { seq } = await house.get<{ seq: number }>('/state');
    await until(() => all.every(({ heard }, one) => heard.changes > before[one]! && heard.seq >= seq), 'the check on all boards');
    latencies.push(...all.map(({ heard }) => heard.lastMs - sent));
  }
  expect(all.map(({ heard }) => heard.gaps)).toEqual(all.map(() => 0));
  expect(new Set(all.map(({ heard }) => heard.seq)).size).toBe(1);
  measured('R13', `${BOARDS} boards open in ${openS.toFixed(1)} s; ${CHECKS} checks on all of them, p50 ${at(latencies, 0.5).toFixed(0)} ms, p95 ${at(latencies, 0.95).toFixed(0)} ms, none missed`);
}, 120_000);
