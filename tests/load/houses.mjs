// Processes of the house on a database of its own, one Redis and nginx before them.
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { openNginx } from './nginx.mjs';

const SERVER = process.env.LOAD_SERVER ?? 'postgres://postgres@127.0.0.1:5432/postgres';
const REDIS = process.env.REDIS_URL ?? 'redis://127.0.0.1:6379';
const main = fileURLToPath(new URL('../../apps/api/dist/main.js', import.meta.url));

const freePort = () =>
  new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });

async function onServer(sql) {
  const client = new pg.Client({ connectionString: SERVER });
  await client.connect();
  await client.query(sql).finally(() => client.end());
}

async function startHouse(settings) {
  const port = await freePort();
  const child = spawn(process.execPath, ['--no-warnings', main], { env: { ...process.env, ...settings, PORT: String(port), HOST: '127.0.0.1' }, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (said = (said + chunk).slice(-20_000)));
  const gone = new Promise((resolve) => child.once('exit', resolve));
  const at = `http://127.0.0.1:${port}`;
  for (let tries = 0; tries < 600; tries++, await pause(50)) {
    if (child.exitCode !== null) throw new Error(`the house ended: ${said}`);
    const ready = await fetch(`${at}/api/health`).then((answer) => answer.json(), () => undefined);
    if (ready?.status === 'ready') break;
  }
  const end = (signal) => (child.kill(signal), gone);
  /** Processor seconds so far, of its own and of the system for it, and memory in MiB. */
  const weight = () => {
    const fields = readFileSync(`/proc/${child.pid}/stat`, 'utf8').split(') ')[1].split(' ');
    const rss = Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))[1]);
    return { cpuS: (Number(fields[11]) + Number(fields[12])) / 100, mib: rss / 1024 };
  };
  return { at, port, pid: child.pid, end, weight, said: () => said };
}

/** Opens so many; `close` ends all that was started and takes the database away. */
export async function openHouses(many) {
  const name = `stokehold_load_${randomBytes(6).toString('hex')}`;
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-load-'));
  await onServer(`create database ${name}`);
  const url = new URL(SERVER);
  url.pathname = `/${name}`;
  const settings = { DATABASE_URL: url.href, REDIS_URL: REDIS, STOKEHOLD_DATA: folder };
  const houses = [];
  for (let nth = 0; nth < many; nth++) houses.push(await startHouse(settings));
  const listen = await freePort();
  const nginx = await openNginx(folder, { listen, ports: houses.map(({ port }) => port) });
  const database = new pg.Pool({ connectionString: url.href, max: 2 });
  database.on('error', () => undefined);
  return {
    at: `http://127.0.0.1:${listen}`, houses, database,
    close: async () => {
      await nginx.close();
      await Promise.all(houses.map(({ end }) => end('SIGTERM')));
      await database.end();
      await onServer(`drop database if exists ${name} with (force)`);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
