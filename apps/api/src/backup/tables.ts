/** Asks the database. */
export type Query = <T>(sql: string, values?: unknown[]) => Promise<T[]>;

/** What stands for the rows of a table, in whatever order they lie. */
export interface TableSum {
  readonly rows: number;
  readonly sum: string;
}
export type Sums = Readonly<Record<string, TableSum>>;

/** The list of migrations comes with the tables that they make. */
const MADE_BY_MIGRATIONS = 'migrations';
/** What says of this house how it stands says nothing of the next one. */
const OF_THIS_HOUSE = ['house_process', 'backup_taken'];

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** The tables of a house, by name. */
export async function tablesOf(query: Query): Promise<string[]> {
  const rows = await query<{ name: string }>(`select tablename::text as name from pg_tables where schemaname = 'public' order by 1`);
  return rows.map(({ name }) => name).filter((name) => name !== MADE_BY_MIGRATIONS && !OF_THIS_HOUSE.includes(name));
}

/** The migrations that made the tables, in their order; none on an empty database. */
export async function migrationsOf(query: Query): Promise<string[]> {
  const [there] = await query<{ there: boolean }>(`select to_regclass('public.${MADE_BY_MIGRATIONS}') is not null as there`);
  return there?.there ? (await query<{ name: string }>(`select name from ${MADE_BY_MIGRATIONS} order by id`)).map(({ name }) => name) : [];
}

/** Two halves of each row's MD5 summed up: a count and 120 bits that any changed, lost or doubled row moves. The session's time zone must be UTC. */
const SUM = (table: string) => `
select count(*)::int as rows, coalesce(sum(('x' || substr(md5, 1, 15))::bit(60)::bigint), 0)::text || '.' || coalesce(sum(('x' || substr(md5, 16, 15))::bit(60)::bigint), 0)::text as sum
from (select md5(to_jsonb(t)::text) as md5 from ${quoted(table)} t) as digests`;

export async function sumsOf(query: Query, tables: readonly string[]): Promise<Sums> {
  const sums: Record<string, TableSum> = {};
  for (const table of tables) sums[table] = (await query<TableSum>(SUM(table)))[0]!;
  return sums;
}

/** Tables whose counts or sums differ, each in a sentence. */
export const differences = (wanted: Sums, found: Sums): string[] =>
  [...new Set([...Object.keys(wanted), ...Object.keys(found)])].sort().flatMap((table) => {
    const [one, other] = [wanted[table], found[table]];
    if (one?.rows === other?.rows && one?.sum === other?.sum) return [];
    return [`${table}: ${one?.rows ?? 'no'} rows with sum ${one?.sum ?? '–'} there, ${other?.rows ?? 'no'} with ${other?.sum ?? '–'} here`];
  });
