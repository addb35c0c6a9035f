// How fast the house starts, what it weighs, how big the board is, and how long a check takes to reach a wall.
import { execFileSync, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { io } from 'socket.io-client';

export const root = fileURLToPath(new URL('../../', import.meta.url));
/** A port that is free now. */
const port = await new Promise((resolve, reject) => {
  const probe = createServer().once('error', reject);
  probe.listen(0, '127.0.0.1', () => {
    const { port: free } = probe.address();
    probe.close(() => resolve(free));
  });
});
export const base = `http://127.0.0.1:${port}`;
export const wait = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
export const quantile = (values, q) => [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * q))];

/** What is running for a bench now: ended with it, however it ends. */
const running = new Set();
for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'])
  process.once(signal, async () => {
    await Promise.all([...running].map(stop));
    process.kill(process.pid, signal);
  });
process.once('exit', () => running.forEach((house) => house.kill('SIGTERM')));

/** Starts the built house on a folder of its own, with more settings if any. */
export async function start(folder, settings = {}) {
  const { DATABASE_URL: _embeddedHere, ...environment } = process.env;
  const began = performance.now();
  const house = spawn(process.execPath, ['apps/api/dist/main.js'], {
    cwd: root, env: { ...environment, PORT: String(port), STOKEHOLD_DATA: folder, STOKEHOLD_DEVICE_REQUESTS: '10000', ...settings }, stdio: ['ignore', 'pipe', 'inherit'],
  });
  running.add(house);
  house.once('exit', () => running.delete(house));
  let said = '';
  house.stdout.on('data', (chunk) => (said += chunk));
  for (;;) {
    const answer = await fetch(`${base}/api/health`).catch(() => undefined);
    if (answer?.ok) return { house, startMs: performance.now() - began, said: () => said };
    if (house.exitCode !== null) throw new Error(`the house did not start: ${said}`);
    if (performance.now() - began > 60_000) throw new Error('the house did not answer within a minute');
    await wait(10);
  }
}
export const stop = async (house) => {
  house.kill('SIGTERM');
  await new Promise((resolve) => house.once('exit', resolve));
};

/** Resident memory of the house and of its database's processes, MiB; shared pages of the database counted once (PSS). */
function memoryMiB(pid, folder) {
  const kb = (text, name) => Number(new RegExp(`^${name}:\\s+(\\d+)`, 'm').exec(text)?.[1] ?? 0);
  const own = kb(readFileSync(`/proc/${pid}/status`, 'utf8'), 'VmRSS');
  const server = Number(readFileSync(join(folder, 'database', 'postmaster.pid'), 'utf8').split('\n')[0]);
  const family = [server, ...execFileSync('ps', ['-o', 'pid=', '--ppid', String(server)], { encoding: 'utf8' }).split('\n').map(Number).filter(Boolean)];
  const database = family.reduce((sum, one) => sum + kb(readFileSync(`/proc/${one}/smaps_rollup`, 'utf8'), 'Pss'), 0);
  return { api: own / 1024, database: database / 1024 };
}

function bundle() {
  const dist = join(root, 'apps/board/dist');
  if (!existsSync(dist)) return console.log('board: not built');
  const html = readFileSync(join(dist, 'index.html'), 'utf8');
  const initial = [...html.matchAll(/(?:src|href)="\/?(assets\/[^"]+\.js)"/g)].map((match) => match[1]);
  const gzip = (file) => gzipSync(readFileSync(join(dist, file))).length / 1000;
  console.log(`board, initial JavaScript: ${initial.reduce((sum, file) => sum + gzip(file), 0).toFixed(0)} kB gzip in ${initial.length} file(s)   (limit 200)`);
  for (const file of readdirSync(join(dist, 'assets')).filter((name) => name.endsWith('.js')).sort()) {
    console.log(`  ${file.padEnd(40)} ${gzip(`assets/${file}`).toFixed(1)} kB gzip`);
  }
}

/** A manager in a yard of six burning pits; asks and commands as a browser would, by cookie. */
export async function setUpYard(said) {
  const jar = [];
  const ask = async (method, path, body) => {
    const answer = await fetch(`${base}/api${path}`, {
      method, headers: { 'content-type': 'application/json', cookie: jar.join('; ') }, ...(body && { body: JSON.stringify(body) }),
    });
    for (const set of answer.headers.getSetCookie()) jar.push(set.split(';')[0]);
    if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
    return answer.json();
  };
  const command = (path, body) => ask('POST', path, { key: randomUUID(), ...body });
  const token = /first-run#(\S+)/.exec(said())?.[1];
  const yard = {
    name: 'Bench Yard', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 30, planHeightM: 20, planTopDeg: 0,
    woodPlace: { xM: 15, yM: 18 }, walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
  };
  const me = await ask('POST', '/first-run', { token, yard, manager: { name: 'Renske', pin: '482913', language: 'en' }, deviceName: 'Bench' });
  const pits = Array.from({ length: 6 }, (_, i) => ({
    id: randomUUID(), name: `Pit ${i + 1}`, xM: 4 * i + 2, yM: 5, fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.3, chamberDiameterM: 0.76,
    fireboxLengthM: 0.61, fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15,
    zones: [{ lengthM: 0.76 }, { lengthM: 0.76 }, { lengthM: 0.76 }], probes: [], band: { lowC: 121, highC: 127 }, retired: false,
  }));
  for (const pit of pits) await command('/pits', { pit });
  const at = (hours) => `${new Date(Date.now() + hours * 3600e3).toISOString().slice(0, 19)}Z`;
  await command('/shifts', {
    id: randomUUID(), startsAt: at(-1), endsAt: at(9),
    people: [{ personId: me.person.id, startsAt: at(-1), endsAt: at(9), breaks: [] }],
    pits: pits.map(({ id, band }) => ({ pitId: id, band, lightAt: at(-0.9) })),
  });
  return { jar, command, pits, at, ask };
}

async function checkToWall(said) {
  const { jar, command, pits, at } = await setUpYard(said);
  const socket = io(base, { path: '/live', transports: ['websocket'], extraHeaders: { cookie: jar.join('; '), origin: base } });
  await new Promise((resolve, reject) => {
    socket.once('beat', resolve);
    socket.once('connect_error', reject);
    setTimeout(() => reject(new Error('no beat within 10 s')), 10_000);
  });
  await wait(2500);
  const reached = [];
  const answered = [];
  for (let i = 0; i < 30; i++) {
    const pitId = pits[i % 6].id;
    const seen = new Promise((resolve) => {
      let recorded = false;
      const look = ({ event, changed }) => {
        recorded ||= event === 'check-recorded';
        if (!recorded || !changed.pits?.some((one) => one.pit.id === pitId)) return;
        socket.off('change', look);
        resolve();
      };
      socket.on('change', look);
    });
    const began = performance.now();
    await command('/checks', { pitId, seenAt: at(0), bed: 'fair', left: 'some', raked: false, splits: 1, fireEndTempC: 124, stackEndTempC: 122 });
    answered.push(performance.now() - began);
    await seen;
    reached.push(performance.now() - began);
    await wait(100);
  }
  socket.close();
  console.log(`check acknowledged: median ${quantile(answered, 0.5).toFixed(0)} ms, p95 ${quantile(answered, 0.95).toFixed(0)} ms`);
  console.log(`check on the wall:  median ${quantile(reached, 0.5).toFixed(0)} ms, p95 ${quantile(reached, 0.95).toFixed(0)} ms   (limit 1000)`);
}

export async function run() {
  bundle();
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-bench-'));
  chmodSync(folder, 0o755);
  try {
    const first = await start(folder);
    console.log(`start to first answer, empty folder: ${(first.startMs / 1000).toFixed(2)} s   (limit 10)`);
    await checkToWall(first.said);
    const memory = memoryMiB(first.house.pid, folder);
    console.log(`memory after 30 checks: API ${memory.api.toFixed(0)} MiB + database ${memory.database.toFixed(0)} MiB = ${(memory.api + memory.database).toFixed(0)} MiB   (limit 350)`);
    await stop(first.house);
    const warm = await start(folder);
    console.log(`start to first answer, warm: ${(warm.startMs / 1000).toFixed(2)} s   (limit 5)`);
    await stop(warm.house);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run();
