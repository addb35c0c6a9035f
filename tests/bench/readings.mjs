// Readings as they pour in: 2 000 a second over HTTP batches and over an MQTT broker while six fires are estimated; what a year of them weighs.
// On embedded servers of its own. The broker: MQTT_URL, or one on 127.0.0.1:1883; where none answers that part is left out, and says so.
import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import { connectAsync } from 'mqtt';
import { createHash, createHmac, randomBytes, randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import pg from 'pg';
import { io } from 'socket.io-client';
import { AppModule } from '../../apps/api/dist/app.module.js';
import { EmbeddedDatabase } from '../../apps/api/dist/platform/database/index.js';
import { Readings } from '../../apps/api/dist/readings/index.js';
import { Thinning } from '../../apps/api/dist/readings/thinning.js';
import { base, quantile, setUpYard, start, stop, wait } from './house.mjs';

const SECONDS = Number(process.env.READINGS_SECONDS ?? 60);
/** Yards beside the one that burns; each gateway sends one message a second. */
const YARDS = 40;
const PITS = 5;
const PROBES = 10;
const MQTT = process.env.MQTT_URL ?? 'mqtt://127.0.0.1:1883';
const iso = (ms) => `${new Date(ms).toISOString().slice(0, 19)}Z`;
const hashOf = (token) => createHash('sha256').update(token).digest();

/** A gateway, its token, and the probes that it reads. */
async function gatewayOf(database, yardId, probes) {
  const [deviceId, token] = [randomUUID(), randomBytes(32).toString('base64url')];
  await database.query(`insert into device values ($1, $2, 'Gateway', 'gateway', $3, now(), null, null)`, [deviceId, yardId, hashOf(token)]);
  return { yardId, deviceId, token, probes };
}

/** Yards with cold pits, each probe read every second. */
async function otherYards(database) {
  const gateways = [];
  for (let n = 0; n < YARDS; n++) {
    const yardId = randomUUID();
    await database.query(`insert into yard values ($1, $2, 'America/Chicago', 'us', 'en', 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, now())`, [yardId, `Yard ${n}`]);
    await database.query(`insert into pit select gen_random_uuid(), $1, 'Pit ' || n, n, 4, 'left', 90, 2.28, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false from generate_series(1, ${PITS}) n`, [yardId]);
    const { rows } = await database.query(`insert into probe select gen_random_uuid(), $1, pit.id, 'Probe ' || n, 0, false from pit, generate_series(1, ${PROBES}) n where yard_id = $1 returning id`, [yardId]);
    gateways.push(await gatewayOf(database, yardId, rows.map(({ id }) => id)));
  }
  return gateways;
}

/** The yard that burns: six fires with a probe at either end. */
async function burningYard(database, said) {
  const { jar, command, pits } = await setUpYard(said);
  for (const pit of pits) {
    const probes = [{ id: randomUUID(), name: 'fire end', zone: 0 }, { id: randomUUID(), name: 'stack end', zone: 2 }];
    await command('/pits', { pit: { ...pit, probes } });
    pit.probes = probes;
  }
  const { rows: [yard] } = await database.query('select yard_id as id from pit where id = $1', [pits[0].id]);
  return { cookie: jar.join('; '), gateway: await gatewayOf(database, yard.id, pits.flatMap(({ probes }) => probes.map(({ id }) => id))) };
}

const message = ({ probes }, takenAt) => ({ key: randomUUID(), readings: probes.map((probeId, n) => ({ probeId, takenAt, tempC: Math.round((121 + 3 * Math.sin(Date.now() / 90e3 + n) + Math.random()) * 10) / 10 })) });

async function overHttp() {
  const post = async (gateway, body) => {
    const answer = await fetch(`${base}/api/readings`, { method: 'POST', headers: { 'content-type': 'application/json', authorization: `Bearer ${gateway.token}` }, body: JSON.stringify(body) });
    if (!answer.ok) throw new Error(`readings: ${answer.status} ${await answer.text()}`);
  };
  return { name: 'HTTP batches', send: post, close: async () => undefined };
}
async function overMqtt() {
  const client = await connectAsync(MQTT, { protocolVersion: 5, connectTimeout: 3000, reconnectPeriod: 0 });
  const send = (gateway, body) => {
    const payload = JSON.stringify(body);
    const signature = createHmac('sha256', hashOf(gateway.token)).update(payload).digest('hex');
    return client.publishAsync(`stokehold/${gateway.yardId}/${gateway.deviceId}/readings`, payload, { qos: 1, properties: { userProperties: { signature } } });
  };
  return { name: 'MQTT, QoS 1', send, close: () => client.endAsync() };
}

/** p99 of the event loop's delay since it was asked last, ms; the loop's own timer of 10 ms is in it. */
async function loopDelayMs(cookie) {
  const text = await (await fetch(`${base}/api/metrics`, { headers: { cookie } })).text();
  return Number(/^nodejs_eventloop_lag_p99_seconds (\S+)/m.exec(text)?.[1]) * 1000;
}

/** Sends every gateway's message each second, spread over it, for so long; gives what came of it. */
async function pour({ send, name }, { gateways, burning, database }) {
  const socket = io(base, { path: '/live', transports: ['websocket'], extraHeaders: { cookie: burning.cookie, origin: base } });
  await new Promise((resolve, reject) => (socket.once('beat', resolve), socket.once('connect_error', reject)));
  const [sentAt, reached, answered] = [[], [], []];
  socket.on('change', ({ event }) => event === 'readings-recorded' && sentAt.length > 0 && reached.push(performance.now() - sentAt.shift()));
  const all = [...gateways, burning.gateway];
  const before = Number((await database.query('select count(*) from reading')).rows[0].count);
  await loopDelayMs(burning.cookie);
  const began = performance.now();
  const [firstMs, open] = [Math.ceil(Date.now() / 1000) * 1000, []];
  for (let s = 0; s < SECONDS; s++) {
    for (const [n, gateway] of all.entries()) {
      const due = began + 1000 * (s + n / all.length);
      if (performance.now() < due) await wait(due - performance.now());
      const from = performance.now();
      if (gateway === burning.gateway) sentAt.push(from);
      open.push(send(gateway, message(gateway, iso(firstMs - 300_000 + 1000 * s))).then(() => answered.push(performance.now() - from)));
    }
  }
  const sent = SECONDS * all.reduce((sum, { probes }) => sum + probes.length, 0);
  await Promise.all(open);
  const stored = async () => Number((await database.query('select count(*) from reading')).rows[0].count) - before;
  while ((await stored()) < sent && performance.now() - began < (SECONDS + 120) * 1000) await wait(200);
  const kept = await stored();
  const tookS = (performance.now() - began) / 1000;
  const delayMs = await loopDelayMs(burning.cookie);
  await wait(500);
  socket.close();
  console.log(`${name}: ${sent} readings sent in ${SECONDS} s, ${kept} kept, the last ${(tookS - SECONDS).toFixed(1)} s after; ${(kept / tookS).toFixed(0)} a second   (limit 2000)`);
  console.log(`  answered: median ${quantile(answered, 0.5).toFixed(0)} ms, p99 ${quantile(answered, 0.99).toFixed(0)} ms; reading to the wall's feed: p50 ${quantile(reached, 0.5)?.toFixed(0)} ms, p99 ${quantile(reached, 0.99)?.toFixed(0)} ms of ${reached.length}   (limit 1000)`);
  console.log(`  event loop's delay, p99: ${delayMs.toFixed(0)} ms   (limit 50)`);
}

async function load() {
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-readings-'));
  chmodSync(folder, 0o755);
  const own = await EmbeddedDatabase.open({ folder: join(folder, 'server') });
  const database = new pg.Pool({ connectionString: own.url, max: 2 });
  const mqtt = await overMqtt().catch(() => undefined);
  try {
    const { house, said } = await start(folder, { DATABASE_URL: own.url, ...(mqtt && { MQTT_URL: MQTT, MQTT_CLIENT_ID: `bench-${randomUUID()}` }) });
    const burning = await burningYard(database, said);
    const gateways = await otherYards(database);
    await wait(3000);
    for (const way of [await overHttp(), ...(mqtt ? [mqtt] : [])]) await pour(way, { gateways, burning, database });
    if (!mqtt) console.log(`MQTT: no broker answers at ${MQTT}; start one (Debian: apt-get install mosquitto) or set MQTT_URL`);
    await stop(house);
  } finally {
    await mqtt?.close();
    await database.end();
    await own.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const DAYS = 3;
const YEAR_PROBES = 40;

/** Really stored rows of three days of 40 probes at 10 s, thinned by the house itself; the rest of the year is reckoned from them. */
async function year() {
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-year-'));
  chmodSync(folder, 0o755);
  const own = await EmbeddedDatabase.open({ folder: join(folder, 'server'), settings: { fsync: 'off' } });
  const app = await NestFactory.createApplicationContext(AppModule.on({ databaseUrl: own.url, workers: 0, connections: 4, dataFolder: folder }), { logger: ['error'] });
  const database = new pg.Pool({ connectionString: own.url, max: 2 });
  try {
    const yardId = randomUUID();
    await database.query(`insert into yard values ($1, 'Saltmarsh Yard', 'America/Chicago', 'us', 'en', 40, 25, 0, 20, 24, 1.2, 1.4, 5, false, 0, now())`, [yardId]);
    await database.query(`insert into pit select gen_random_uuid(), $1, 'Pit ' || n, n, 4, 'left', 90, 2.28, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false from generate_series(1, 10) n`, [yardId]);
    await database.query(`insert into probe select gen_random_uuid(), $1, pit.id, 'Probe ' || n, 0, false from pit, generate_series(1, ${YEAR_PROBES / 10}) n where yard_id = $1`, [yardId]);
    await database.query(`select keep_reading_month(now() - n * interval '1 day') from generate_series(0, ${DAYS}) n`);
    await database.query(`insert into reading (probe_id, device_taken_at, taken_at, arrived_at, temp_c, shown_c) select probe.id, at, at, at, 121 + 3 * sin(extract(epoch from at) / 900) + random(), 121 + random()
      from generate_series(date_trunc('minute', now()) - interval '${DAYS} days', now(), interval '10 seconds') at, probe where yard_id = $1 order by at`, [yardId]);
    const now = Math.floor(Date.now() / 1000);
    await app.get(Thinning).thin(now);
    await database.query('vacuum analyze');
    const bytes = async (sql) => Number((await database.query(sql)).rows[0].bytes);
    const perRawNow = async () => (await bytes(`select sum(pg_total_relation_size(inhrelid)) as bytes from pg_inherits where inhparent = 'reading'::regclass`)) / (await bytes('select count(*) as bytes from reading'));
    const perRaw = await perRawNow();
    const perThin = (await bytes(`select pg_total_relation_size('reading_thin') as bytes`)) / (await bytes('select count(*) as bytes from reading_thin'));
    const [month, thin] = [31 * 8640 * YEAR_PROBES, 365 * 720 * YEAR_PROBES];
    const runs = [];
    for (let n = 0; n < 20; n++) {
      const from = performance.now();
      await app.get(Readings).courses({ yardId }, { from: iso((now - 48 * 3600) * 1000) });
      runs.push(performance.now() - from);
    }
    console.log(`the picture of a day and its night, ${YEAR_PROBES} probes x 24 h: median ${quantile(runs, 0.5).toFixed(0)} ms, p95 ${quantile(runs, 0.95).toFixed(0)} ms   (limit 100)`);
    const ended = new Date(now * 1000);
    await app.get(Thinning).thin(Date.UTC(ended.getUTCFullYear(), ended.getUTCMonth() + 1, 3) / 1000);
    const perPressed = await perRawNow();
    console.log(`a year of ${YEAR_PROBES} probes at 10 s: ${perRaw.toFixed(0)} B a reading of the month that runs, ${perPressed.toFixed(0)} B of the one before, ${(month / 1e6).toFixed(1)} million each, and means of ${perThin.toFixed(0)} B x ${(thin / 1e6).toFixed(1)} million = ${((month * (perRaw + perPressed) + thin * perThin) / 1e9).toFixed(2)} GB, reckoned from ${DAYS} stored days   (limit 5)`);
  } finally {
    await database.end();
    await app.close();
    await own.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Prints what the readings come to. */
export async function run() {
  await load();
  await year();
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();
