import type { Entry } from '../platform/index.js';

/** Asks the database. */
export type Query = <T>(sql: string, values?: unknown[]) => Promise<T[]>;

/** An entry as it lies in the database. */
export interface StoredEntry extends Entry {
  /** Its number in the yard, from 1. */
  readonly nth: number;
  readonly digest: Buffer;
  readonly link: Buffer;
  /** The digests of the facts that were written with it, one after the other; null where none was. */
  readonly facts: Buffer | null;
}

/** Entries fetched at once: few enough for any machine's memory. */
const AT_ONCE = 1000;

/** The entries of a yard in their order, a batch at a time. */
export async function* entriesOf(query: Query, yardId: string): AsyncGenerator<StoredEntry> {
  for (let after = 0; ; ) {
    const batch = await query<StoredEntry & { nth: string | number }>(
      `select nth, regexp_replace(to_char(at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'), '\\.000000Z$', 'Z') as at,
         crew_member_id as "personId", device_id as "deviceId", command, command_key as key, body, digest, link,
         (select string_agg(f.digest, '' order by f.kind collate "C", f.id) from kept_fact f where f.yard_id = $1 and f.nth = audit_entry.nth) as facts
       from audit_entry where yard_id = $1 and nth > $2 order by nth limit ${AT_ONCE}`,
      [yardId, after],
    );
    for (const entry of batch) yield { ...entry, nth: Number(entry.nth) };
    const last = batch.at(-1);
    if (!last) return;
    after = Number(last.nth);
  }
}
