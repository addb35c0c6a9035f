import 'reflect-metadata';
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { openHouse } from '../house.js';
import { EmbeddedDatabase } from '../platform/database/index.js';
import { PracticeNights, readSample } from './index.js';

/** The fires of one event are reckoned side by side; what comes out does not depend on it. */
const THREADS = 2;

/** What was typed after `npm run practice --`. */
function asked(): { file: string; seed: number } {
  const { values } = parseArgs({ options: { file: { type: 'string' }, seed: { type: 'string', default: '1' } } });
  const seed = Number(values.seed);
  if (!values.file || !Number.isInteger(seed)) throw new Error('Give a file and a seed: npm run practice -- --file infra/sample/brackwater.json --seed 7');
  return { file: resolve(process.env['INIT_CWD'] ?? '.', values.file), seed };
}

/**
 * A whole practice night as fast as it goes, on a database of its own that is gone afterwards. Prints what the night came
 * to as one JSON object, and the time it took, which differs from run to run, to the other stream.
 */
async function main(): Promise<void> {
  const { file, seed } = asked();
  const sample = readSample(file);
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-practice-'));
  chmodSync(folder, 0o755); // the server runs as a user of its own when this process is root
  const began = process.hrtime.bigint();
  // Nothing of it need outlive a power cut.
  const database = await EmbeddedDatabase.open({ folder, settings: { fsync: 'off', synchronous_commit: 'off' } });
  try {
    const house = await openHouse({ databaseUrl: database.url, workers: THREADS, dataFolder: folder });
    const night = await house.get(PracticeNights).openStill(sample, seed);
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
