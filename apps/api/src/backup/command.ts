import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { Client } from 'pg';
import { openDatabase } from '../platform/database/index.js';
import type { Query, Sums } from './tables.js';

const COULD_NOT = 2;

/** Opens a database for a command, and closes it whatever happens. */
export async function withDatabase<T>(settings: Parameters<typeof openDatabase>[0], work: (query: Query, url: string) => Promise<T>): Promise<T> {
  const database = await openDatabase(settings);
  const client = new Client({ connectionString: database.url });
  try {
    await client.connect();
    return await work(async (sql, given) => (await client.query(sql, given)).rows, database.url);
  } finally {
    await client.end().catch(() => undefined);
    await database.close();
  }
}

/** The key of the PINs, in a file of the data folder; undefined where nobody has a PIN yet. */
const keyFile = (folder: string) => join(resolve(folder), 'secret.key');
export const secretKeyOf = (folder: string): Buffer | undefined => (existsSync(keyFile(folder)) ? readFileSync(keyFile(folder)) : undefined);

/** Puts the key where the house looks for it; another one that lies there is never written over. */
export function putSecretKey(folder: string, key: string | null): void {
  if (key === null) return;
  const wanted = Buffer.from(key, 'base64');
  const there = secretKeyOf(folder);
  if (there?.equals(wanted)) return;
  if (there) throw new Error(`${keyFile(folder)} is the key of another house: set STOKEHOLD_DATA to a folder of its own.`);
  mkdirSync(dirname(keyFile(folder)), { recursive: true });
  writeFileSync(keyFile(folder), wanted, { mode: 0o600, flag: 'wx', flush: true });
}

export const summary = (sums: Sums): string => `${Object.keys(sums).length} tables, ${Object.values(sums).reduce((sum, { rows }) => sum + rows, 0)} rows`;

/** Runs a command: its sentence goes to the window, and what hindered it too. */
export function asCommand(hindered: string, work: () => Promise<string>): void {
  work().then(
    (said) => process.stdout.write(`${said}\n`),
    (error: unknown) => {
      process.stderr.write(`${hindered} ${error instanceof Error ? error.message : String(error)}\n`);
      process.exitCode = COULD_NOT;
    },
  );
}
