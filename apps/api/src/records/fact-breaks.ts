import { FACT_TABLES, factDigest, type FactTable } from '../platform/index.js';
import type { Query } from './stored.js';

/** A row that is not as the chain holds it. unlinked: written past the house, with no entry that holds it. */
export interface FactBreak {
  readonly table: FactTable;
  readonly id: string;
  /** The entry it was kept with. */
  readonly nth: number | null;
  readonly what: 'changed' | 'missing' | 'unlinked';
}

const differing = (table: FactTable): string => `
select id, nth, case when row_digest is null then 'missing' when nth is null then 'unlinked' else 'changed' end as what
from (select id, nth, digest from kept_fact where yard_id = $1 and kind = '${table}') as kept
full join (select f.id, ${factDigest('f')} as row_digest from ${table} f where yard_id = $1) as stored using (id)
where nth is null or row_digest is distinct from digest order by nth, id`;

/** Rows of a yard that were changed, taken away, or written past the house. The session's time zone must be UTC. */
export async function factBreaks(query: Query, yardId: string): Promise<FactBreak[]> {
  const all: FactBreak[] = [];
  for (const table of FACT_TABLES) {
    const rows = await query<{ id: string; nth: string | null; what: FactBreak['what'] }>(differing(table), [yardId]);
    all.push(...rows.map(({ id, nth, what }) => ({ table, id, nth: nth === null ? null : Number(nth), what })));
  }
  return all;
}
