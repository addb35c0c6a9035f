import 'reflect-metadata';
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdtempSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { EmbeddedDatabase } from '../platform/database/index.js';
import { readSample } from './sample.js';

/** The fires of one event are reckoned side by side; what comes out does not depend on it. */
const THREADS = 2;

/** Nothing of the night need outlive it. */
const THROWAWAY = { fsync: 'off', synchronous_commit: 'off', full_page_writes: 'off', wal_level: 'minimal', max_wal_senders: '0', autovacuum: 'off', jit: 'off' };
/** A night's database takes less; in memory it is made and gone three times as fast as on a disk. */
const ROOM_BYTES = 1e9;
const MEMORY = '/dev/shm';

/** Where the night's database lies: in memory where the system has a folder with room there, else among temporary files. */
function placeOfNight(): string {
  try {
    const { bavail, bsize } = statfsSync(MEMORY);
    if (bavail * bsize >= ROOM_BYTES) return mkdtempSync(join(MEMORY, 'stokehold-practice-'));
  } catch {
    // No such folder here.
  }
  return mkdtempSync(join(tmpdir(), 'stokehold-practice-'));
}

/** What was typed after `npm run practice --`. */
function asked(): { file: string; seed: number; faultyProbes: boolean; broker: string | undefined } {
  const { values } = parseArgs({
    options: { file: { type: 'string' }, seed: { type: 'string', default: '1' }, 'faulty-probes': { type: 'boolean', default: false }, broker: { type: 'string' } },
  });
  const seed = Number(values.seed);
  if (!values.file || !Number.isInteger(seed)) throw new Error('Give a file and a seed: npm run practice -- --file infra/sample/brackwater.json --seed 7');
  return { file: resolve(process.env['INIT_CWD'] ?? '.', values.file), seed, faultyProbes: values['faulty-probes'], broker: values.broker };
}

/**
 * A whole practice night as fast as it goes, on a database of its own that is gone afterwards. Prints what the night came
 * to as one JSON object, and the time it took, which differs from run to run, to the other stream.
 */
async function main(): Promise<void> {
  const { file, seed, faultyProbes, broker } = asked();
  const sample = readSample(file);
  const folder = placeOfNight();
  chmodSync(folder, 0o755); // the server runs as a user of its own when this process is root
  const began = process.hrtime.bigint();
  // The database starts while the house is loaded.
  const loading = Promise.all([import('../house.js'), import('./index.js'), import('../gateways/index.js')]);
  const database = await EmbeddedDatabase.open({ folder, settings: THROWAWAY });
  try {
    const [{ openHouse }, { PracticeNights }, { Broker }] = await loading;
    const house = await openHouse({ databaseUrl: database.url, workers: THREADS, dataFolder: folder });
    if (broker) await house.get(Broker).open({ url: broker, clientId: `practice-${randomUUID()}`, keepsForS: 0 });
    const night = await house.get(PracticeNights).openStill(sample, seed, { faultyProbes, broker });
    while (!night.isOver) await night.minute();
    process.stdout.write(`${JSON.stringify({ file: sample.yard.name, seed, ...(await night.report()) }, null, 2)}\n`);
    await house.close();
  } finally {
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  }
  process.stderr.write(`${JSON.stringify({ wallClockSeconds: Number(process.hrtime.bigint() - began) / 1e9 })}\n`);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exit(1);
});
