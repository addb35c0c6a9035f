import { BEGINNING, digestOf, linkOf } from '../platform/index.js';
import { type FactBreak, factBreaks } from './fact-breaks.js';
import { entriesOf, type Query, type StoredEntry } from './stored.js';

/** What is wrong with a record, and at which entry. */
export interface Break {
  readonly nth: number;
  readonly what: 'missing' | 'changed' | 'out-of-line' | 'cut-short' | 'other-head';
  /** The entry as it lies there; left out where none does. */
  readonly entry?: StoredEntry;
}
/** A link of the record that was written down elsewhere, as on a printed page. */
export interface Head {
  readonly nth: number;
  readonly link: string;
}
export interface Verified {
  readonly yardId: string;
  readonly yard: string;
  readonly head: Head;
  readonly entries: number;
  readonly breaks: readonly Break[];
  /** Checks, lines of the food log and moves of wood that are not as they were written. */
  readonly facts: readonly FactBreak[];
}

/** Entries that were kept together share a link, which is checked when the last of them has come. */
class Chain {
  readonly breaks: Break[] = [];
  count = 0;
  private before: Buffer = BEGINNING;
  private together: StoredEntry[] = [];
  private nth = 0;

  constructor(
    private readonly yardId: string,
    private readonly known: Head | undefined,
  ) {}

  take(entry: StoredEntry): void {
    for (let nth = this.nth + 1; nth < entry.nth; nth += 1) this.breaks.push({ nth, what: 'missing' });
    if (this.together[0] && !this.together[0].link.equals(entry.link)) this.close();
    this.together.push(entry);
    this.nth = entry.nth;
    this.count += 1;
    if (!digestOf(this.yardId, entry).equals(entry.digest)) this.breaks.push({ nth: entry.nth, what: 'changed', entry });
    if (this.known?.nth === entry.nth && entry.link.toString('hex') !== this.known.link) this.breaks.push({ nth: entry.nth, what: 'other-head', entry });
  }

  /** All entries have come: the yard's own row says how many there must be, and the last link. */
  end({ nth, link }: Head): void {
    this.close();
    for (let missing = this.nth + 1; missing <= nth; missing += 1) this.breaks.push({ nth: missing, what: 'missing' });
    if (this.nth === nth && this.before.toString('hex') !== link) this.breaks.push({ nth, what: 'cut-short' });
    if (this.known && this.known.nth > this.nth) this.breaks.push({ nth: this.known.nth, what: 'cut-short' });
  }

  private close(): void {
    const [first] = this.together;
    if (!first) return;
    if (!linkOf(this.before, [...this.together.map(({ digest }) => digest), ...this.together.flatMap(({ facts }) => facts ?? [])]).equals(first.link)) this.breaks.push({ nth: first.nth, what: 'out-of-line', entry: first });
    this.before = first.link; // What follows is held to what lies there, so that each break is named by itself.
    this.together = [];
  }
}

/** Goes through the record of every yard, entry by entry, at one instant of the database; `known` holds one of them to a link kept elsewhere. */
export async function verifyRecords(query: Query, known?: Head): Promise<Verified[]> {
  await query('begin isolation level repeatable read read only');
  await query(`set local timezone = 'UTC'`);
  try {
    const yards = await query<{ id: string; name: string; nth: string; link: Buffer }>(
      'select id, name, record_nth as nth, record_link as link from yard where not practice order by created_at, id',
    );
    const all: Verified[] = [];
    for (const { id, name, nth, link } of yards) {
      const head = { nth: Number(nth), link: link.toString('hex') };
      const chain = new Chain(id, known);
      for await (const entry of entriesOf(query, id)) chain.take(entry);
      chain.end(head);
      all.push({ yardId: id, yard: name, head, entries: chain.count, breaks: chain.breaks, facts: await factBreaks(query, id) });
    }
    return all;
  } finally {
    await query('rollback');
  }
}
