import { parseArgs } from 'node:util';
import { Client } from 'pg';
import { openDatabase } from '../platform/database/index.js';
import { readSettings } from '../platform/config.js';
import type { FactBreak } from './fact-breaks.js';
import type { Query } from './stored.js';
import { type Break, type Head, type Verified, verifyRecords } from './verify.js';

const MOST_NAMED = 20;
const BROKEN = 1;
const COULD_NOT = 2;

const SAID: Readonly<Record<Break['what'], string>> = {
  missing: 'is not there any more',
  changed: 'is not what was written',
  'out-of-line': 'does not follow from the entries before it',
  'cut-short': 'is not the end that the record had',
  'other-head': 'has another link than the one that was given',
};

const FACT_SAID: Readonly<Record<FactBreak['what'], string>> = {
  changed: 'is not what was written',
  missing: 'is not there any more',
  unlinked: 'was written past the house',
};

function headOf(given: string | undefined): Head | undefined {
  if (given === undefined) return undefined;
  const [, nth, link] = /^(\d+):([0-9a-f]{64})$/i.exec(given) ?? [];
  if (!nth || !link) throw new Error("--head takes the number and the link of an entry as a printed page shows them, such as 812:3f…, 64 digits after the colon.");
  return { nth: Number(nth), link: link.toLowerCase() };
}

const lineOf = ({ nth, what, entry }: Break): string =>
  `  entry ${nth}${entry ? ` (${entry.command}, ${entry.at}, key ${entry.key})` : ''} ${SAID[what]}`;

const factLineOf = ({ table, id, nth, what }: FactBreak): string => `  ${table} ${id}${nth === null ? '' : ` (kept with entry ${nth})`} ${FACT_SAID[what]}`;

/** What the command prints of a yard. */
export function report({ yard, head, entries, breaks, facts }: Verified): string {
  const end = `Its end is ${head.nth}:${head.link}`;
  const named = [...breaks.map(lineOf), ...facts.map(factLineOf)];
  if (named.length === 0) return `${yard}: ${entries} entries, each as it was written and in its place. ${end}`;
  const more = named.length > MOST_NAMED ? [`  and ${named.length - MOST_NAMED} more`] : [];
  return [`${yard}: ${entries} entries, and the record is broken. ${end}`, ...named.slice(0, MOST_NAMED), ...more].join('\n');
}

/** Verifies the record of every yard; ends with 1 when one is broken, with 2 when it could not be read. */
async function main(): Promise<void> {
  const { values } = parseArgs({ options: { head: { type: 'string' } } });
  const head = headOf(values.head);
  const database = await openDatabase(readSettings(process.env));
  const client = new Client({ connectionString: database.url });
  try {
    await client.connect();
    const query: Query = async <T>(sql: string, given?: unknown[]) => (await client.query(sql, given)).rows as T[];
    const [there] = await query<{ there: boolean }>("select to_regclass('yard') is not null as there");
    if (!there?.there) throw new Error('No house was opened on this database yet: start Stokehold once, or correct STOKEHOLD_DATA or DATABASE_URL.');
    const all = await verifyRecords(query, head);
    process.stdout.write(`${all.map(report).join('\n') || 'There is no yard yet.'}\n`);
    if (all.some(({ breaks, facts }) => breaks.length + facts.length > 0)) process.exitCode = BROKEN;
  } finally {
    await client.end();
    await database.close();
  }
}

main().catch((error: unknown) => {
  process.stderr.write(`The record could not be verified. ${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = COULD_NOT;
});
