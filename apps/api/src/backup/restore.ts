import { DataSource } from 'typeorm';
import { MIGRATIONS, socketOf } from '../platform/index.js';
import { checkedBackup, type Header, piecesOf } from './file.js';
import { differences, migrationsOf, type Query, quoted, type Sums, sumsOf, tablesOf } from './tables.js';

/** Makes the tables as they were when the backup was taken; what came after is made by the next start of the house. */
async function makeTables(url: string, { migrations }: Header): Promise<void> {
  const unknown = migrations.find((name) => !MIGRATIONS.some((one) => one.name === name));
  if (unknown) throw new Error(`This backup is of a later Stokehold (${unknown}): install that one, or a newer one, and restore it there.`);
  const source = new DataSource({ type: 'postgres', url, migrations: MIGRATIONS.filter(({ name }) => migrations.includes(name)), migrationsTransactionMode: 'all', extra: socketOf(url) });
  await source.initialize();
  await source.runMigrations().finally(() => source.destroy());
}

interface Constraint {
  readonly table: string;
  readonly name: string;
  readonly definition: string;
}
const FOREIGN_KEYS = `
select conrelid::regclass::text as table, conname::text as name, pg_get_constraintdef(oid) as definition from pg_constraint
where contype = 'f' and connamespace = 'public'::regnamespace order by 1, 2`;

/** Rows come in the order of their tables, not of what they refer to: what binds them is put aside and put back, where it is held to every row. */
async function unbound(query: Query, tables: readonly string[], work: () => Promise<void>): Promise<void> {
  const keys = await query<Constraint>(FOREIGN_KEYS);
  for (const { table, name } of keys) await query(`alter table ${table} drop constraint ${quoted(name)}`);
  for (const table of tables) await query(`alter table ${quoted(table)} disable trigger user`);
  await work();
  for (const table of tables) await query(`alter table ${quoted(table)} enable trigger user`);
  for (const { table, name, definition } of keys) await query(`alter table ${table} add constraint ${quoted(name)} ${definition}`);
}

/** Numbers that the database gives out go on after the last one that was given. */
const SEQUENCES = `
select table_name::text as table, column_name::text as column from information_schema.columns where table_schema = 'public' and is_identity = 'YES'`;

async function load(query: Query, path: string, tables: readonly string[]): Promise<void> {
  for await (const { table, rows } of piecesOf(path)) {
    if (!tables.includes(table)) throw new Error(`The backup has a table ${table} that this Stokehold does not know.`);
    await query(`insert into ${quoted(table)} overriding system value select * from jsonb_populate_recordset(null::${quoted(table)}, $1::jsonb)`, [`[${rows.join(',')}]`]);
  }
  for (const { table, column } of await query<{ table: string; column: string }>(SEQUENCES)) {
    await query(`select setval(pg_get_serial_sequence('${table}', '${column}'), coalesce((select max(${quoted(column)}) from ${quoted(table)}), 0) + 1, false)`);
  }
}

export interface Restored {
  readonly header: Header;
  readonly sums: Sums;
}

/**
 * Puts a backup into an empty database: all of it, or nothing. Counts and sums are compared before it is committed.
 * Throws with a sentence that says what to do.
 */
export async function restore(query: Query, url: string, path: string): Promise<Restored> {
  const { header, footer } = await checkedBackup(path);
  if ((await migrationsOf(query)).length > 0) throw new Error('There is a house on this database already: restore into an empty one, so that nothing is written over.');
  await makeTables(url, header);
  await query('begin');
  try {
    await query(`set local timezone = 'UTC'`);
    const tables = await tablesOf(query);
    await unbound(query, tables, () => load(query, path, tables));
    const sums = await sumsOf(query, tables);
    const wrong = differences(footer.sums, sums);
    if (wrong.length > 0) throw new Error(`Not all came over, and nothing was kept: ${wrong.join('; ')}.`);
    await query('commit');
    return { header, sums };
  } catch (error) {
    await query('rollback');
    await query('drop schema public cascade; create schema public');
    throw error;
  }
}
