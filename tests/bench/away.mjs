// Somebody is taken away at 01:00 of a practice night: how long until the repaired plan is there, with each change and its reason,
// and how long an answer takes. Own process and database; the night before it passes as fast as it goes.
import 'reflect-metadata';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';

const api = new URL('../../apps/api/dist/', import.meta.url);
const [{ openHouse }, { EmbeddedDatabase }, { PracticeNights, readSample }, { Plans }, { Shifts }, { Outbox }] = await Promise.all(
  ['house.js', 'platform/database/index.js', 'practice/index.js', 'planning/index.js', 'shifts/index.js', 'platform/index.js'].map((file) => import(new URL(file, api))),
);

export async function run() {
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-away-'));
  chmodSync(folder, 0o755);
  const database = await EmbeddedDatabase.open({ folder, settings: { fsync: 'off', synchronous_commit: 'off' } });
  try {
    const house = await openHouse({ databaseUrl: database.url, workers: 1, dataFolder: folder });
    const sample = readSample(fileURLToPath(new URL('../../infra/sample/brackwater.json', import.meta.url)));
    const night = await house.get(PracticeNights).openStill(sample, 7);
    const { yardId, startsAt, lead } = night.yard;
    while (night.at < startsAt + 8 * 3600) await night.minute();
    await away({ house, yardId, lead });
    await house.close();
  } finally {
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function away({ house, yardId, lead }) {
  const { DataSource } = await import('typeorm');
  const em = house.get(DataSource).manager;
  const before = await house.get(Plans).view(em, yardId);
  const [next] = before.assignments.filter(({ work }) => work.kind === 'check').slice(-1);
  const personId = next.people[0];
  const began = performance.now();
  await house.get(Shifts).reportPresence(lead, { key: '01234567-89ab-7def-8123-456789abcdef', personId, state: 'away' });
  await house.get(Outbox).drain(yardId);
  const ms = performance.now() - began;
  const after = await house.get(Plans).view(em, yardId);
  const theirs = after.assignments.filter(({ people }) => people.includes(personId)).length;
  console.log(`away at 01:00: ${ms.toFixed(0)} ms until the repaired plan is kept (must 1000); ${after.changes.length} changes told for two hours, each with its reason; ${theirs} pieces left with them`);
  const reasons = after.changes.reduce((sum, { because }) => ({ ...sum, [because.code]: (sum[because.code] ?? 0) + 1 }), {});
  console.log(`reasons: ${Object.entries(reasons).map(([code, n]) => `${code} ${n}`).join(', ')}; past latest safe ${after.assignments.filter(({ work, pastLatestS }) => work.kind === 'check' && pastLatestS > 0).length}, without a place ${after.unplaced.length}`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await run();
