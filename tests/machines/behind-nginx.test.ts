import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { freePort, type House } from '../faults/one-house.js';
import { openNginx, writeConf } from '../load/nginx.mjs';
import { checkFire, Ground, lightPit } from './several-houses.js';

const infra = fileURLToPath(new URL('../../infra/', import.meta.url));
let ground: Ground;
let folder: string;
let nginx: Awaited<ReturnType<typeof openNginx>> | undefined;
beforeEach(async () => {
  ground = await Ground.open();
  folder = mkdtempSync(join(tmpdir(), 'stokehold-nginx-'));
});
afterEach(async () => {
  await nginx?.close();
  nginx = undefined;
  await ground.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Which process of the house answers: each has its own count of what it did. */
const startedAt = async (at: string, cookie: string) => /^process_start_time_seconds (\S+)/m.exec(await (await fetch(`${at}/api/metrics`, { headers: { cookie } })).text())?.[1];

it('what is shipped is a configuration that nginx takes', async () => {
  execFileSync(join(infra, 'https/certificate.sh'), [folder, 'stokehold.lan']);
  const shipped = readFileSync(join(infra, 'nginx/stokehold.conf'), 'utf8').replaceAll('/etc/stokehold', folder).replace('listen 80;', `listen 127.0.0.1:${await freePort()};`).replace('listen 443 ssl;', `listen 127.0.0.1:${await freePort()} ssl;`);
  const { status, stderr } = spawnSync('nginx', ['-t', '-c', writeConf(folder, shipped), '-e', 'stderr'], { encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, expect.stringContaining('test is successful')]);
});

it('a yard stays with one process, and when that one is killed the other goes on with it: a command sent then is done, once', async () => {
  const houses: House[] = [await ground.house()];
  await houses[0]!.firstRun();
  const pitId = await lightPit(houses[0]!);
  houses.push((await ground.house()).as(houses[0]!.person));
  const listen = await freePort();
  nginx = await openNginx(folder, { listen, ports: houses.map(({ at }) => Number(new URL(at).port)) });
  const at = `http://127.0.0.1:${listen}`;
  const answer = await fetch(`${at}/api/me`, { headers: { cookie: houses[0]!.person.cookie } });
  const yard = answer.headers.getSetCookie().map((set) => set.split(';')[0]!).find((pair) => pair.startsWith('stokehold_yard='))!;
  const cookie = `${houses[0]!.person.cookie}; ${yard}`;
  const behind = { post: (path: string, body: object) => fetch(`${at}/api${path}`, { method: 'POST', headers: { 'content-type': 'application/json', cookie }, body: JSON.stringify(body) }) };
  const seen = new Set(await Promise.all(Array.from({ length: 12 }, () => startedAt(at, cookie))));
  expect(seen.size).toBe(1);
  const own = await Promise.all(houses.map((house) => startedAt(house.at, house.person.cookie)));
  const serving = houses[own.findIndex((one) => one !== undefined && seen.has(one))]!;
  const keys = [await checkFire(behind, pitId)];
  await serving.end('SIGKILL');
  keys.push(await checkFire(behind, pitId));
  expect(await ground.query('select key from command_key where key = any($1) order by at', [keys])).toEqual(keys.map((key) => ({ key })));
  expect(await ground.query('select count(*)::int as n from fire_check')).toEqual([{ n: 2 }]);
  expect(seen).not.toContain(await startedAt(at, cookie));
});
