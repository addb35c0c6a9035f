import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { EmbeddedDatabase } from '../apps/api/src/platform/database/index.js';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A server on which each test file makes a database of its own. */
    databaseServer: string;
  }
}

/** The API's tests run on DATABASE_URL where it is set, else on an embedded server of their own that goes when they end. */
export async function setup(project: TestProject): Promise<(() => Promise<void>) | void> {
  const given = process.env['DATABASE_URL'];
  if (given) {
    project.provide('databaseServer', given);
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), 'stokehold-test-'));
  chmodSync(folder, 0o755); // the server runs as a user of its own when this process is root
  // What a test wrote need not outlive a power cut.
  const database = await EmbeddedDatabase.open({ folder, settings: { fsync: 'off', max_connections: '100' } });
  project.provide('databaseServer', database.url);
  const endNow = () => endServer(folder);
  process.once('exit', endNow);
  return async () => {
    process.off('exit', endNow);
    await database.close();
    rmSync(folder, { recursive: true, force: true });
  };
}

/** A run that is broken off must not leave its server behind: it outlives the process that started it. */
function endServer(folder: string): void {
  const pid = Number(readFileSync(join(folder, 'database', 'postmaster.pid'), 'utf8').split('\n')[0]);
  process.kill(pid, 'SIGINT');
}
