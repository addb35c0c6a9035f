import { BackupWriter } from './file.js';
import { migrationsOf, type Query, quoted, type Sums, sumsOf, tablesOf } from './tables.js';

/** Rows fetched at once: few enough for any machine's memory. */
const AT_ONCE = 1000;

export interface BackupDone {
  readonly sums: Sums;
}

/** Writes everything of a house at one instant of its database to a file; the house goes on meanwhile. */
export async function backUp(query: Query, path: string, more: { readonly at: string; readonly secretKey: Buffer | undefined }): Promise<BackupDone> {
  await query('begin isolation level repeatable read read only');
  let writer: BackupWriter | undefined;
  try {
    await query(`set local timezone = 'UTC'`);
    const migrations = await migrationsOf(query);
    if (migrations.length === 0) throw new Error('No house was opened on this database yet: there is nothing to back up.');
    const tables = await tablesOf(query);
    writer = new BackupWriter(path);
    await writer.line({ stokehold: 1, at: more.at, migrations, secretKey: more.secretKey?.toString('base64') ?? null });
    for (const table of tables) await writeTable(query, writer, table);
    const sums = await sumsOf(query, tables);
    await writer.finish(sums);
    return { sums };
  } catch (error) {
    writer?.abandon();
    throw error;
  } finally {
    await query('rollback');
  }
}

async function writeTable(query: Query, writer: BackupWriter, table: string): Promise<void> {
  await query(`declare rows_of no scroll cursor for select to_jsonb(t)::text as row from ${quoted(table)} t`);
  for (;;) {
    const rows = await query<{ row: string }>(`fetch ${AT_ONCE} from rows_of`);
    if (rows.length === 0) break;
    await writer.line({ table, rows: rows.map(({ row }) => row) });
  }
  await query('close rows_of');
}

/** Lets the house know when it was taken; a house of before that knows no such table, and the backup is one all the same. */
export async function noteTaken(query: Query, at: string, { sums }: BackupDone): Promise<void> {
  const [known] = await query<{ there: boolean }>(`select to_regclass('public.backup_taken') is not null as there`);
  if (!known?.there) return;
  const rows = Object.values(sums).reduce((sum, one) => sum + one.rows, 0);
  await query('insert into backup_taken (at, rows) values ($1, $2) on conflict (only_one) do update set at = excluded.at, rows = excluded.rows', [at, rows]);
}
