import { Injectable } from '@nestjs/common';
import type { YardEvent } from '@stokehold/domain/contract';
import { type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock } from './clock.js';
import { digestOf, type Entry } from './record.js';

/** A fact with its number in its yard. */
export interface Told {
  readonly seq: number;
  readonly event: YardEvent;
}

/** One transaction of one yard: what is written in it and the facts it tells stand or fall together. */
export class Deed {
  private told: YardEvent[] = [];
  private entries: Entry[] = [];
  private readonly writes: Promise<unknown>[] = [];

  constructor(
    readonly em: EntityManager,
    readonly yardId: YardId,
    /** The yard's time at which the deed began. */
    readonly now: EpochS,
    /** By how much the machine's clock shows more than that, since it was set while a night ran, s. */
    readonly aheadS: number,
  ) {}

  /** Facts told so far that are not in the outbox yet, in order; grows while one listens to it. */
  get facts(): readonly YardEvent[] {
    return this.told;
  }

  /** Tells a fact to the house; it reaches the outbox when the deed is done. */
  tell(event: YardEvent): void {
    this.told.push(event);
  }

  /** Puts down for good what was done; it reaches the yard's record when the deed is done. */
  record(entry: Omit<Entry, 'at'>): void {
    this.entries.push({ ...entry, at: toIso(this.now) });
  }

  /** Lets a write go on beside what follows: what is asked after it is answered after it, and the deed is not done before it. */
  alongside(write: Promise<unknown>): void {
    write.catch(() => undefined); // heard of in `written`
    this.writes.push(write);
  }

  /** Rejects with the error of the first write that failed. */
  async written(): Promise<void> {
    await Promise.all(this.writes);
  }

  /**
   * Gives each fact its number in the yard and each entry its link in the yard's record. The yard's row stays locked until
   * the transaction ends, so that numbers become visible in their order and without gaps. Facts whose consequences were
   * drawn in this deed wait for nobody.
   */
  async writeOutbox({ carried } = { carried: false }): Promise<Told[]> {
    const { told: facts, entries } = this;
    if (facts.length === 0 && entries.length === 0) return [];
    this.told = [];
    this.entries = [];
    const seq = await keep(this.em, this.yardId, { facts, entries, at: toIso(this.now), carried });
    return facts.map((event, nth) => ({ event, seq: seq - facts.length + 1 + nth }));
  }
}

/** What a deed leaves behind. */
interface Kept {
  readonly facts: readonly YardEvent[];
  readonly entries: readonly Entry[];
  readonly at: string;
  readonly carried: boolean;
}

/** Facts and entries in one statement, with what this transaction wrote of `FACT_TABLES`; gives the number of the yard's last fact. The link is `linkOf` of platform/record. */
async function keep(em: EntityManager, yardId: YardId, { facts, entries, at, carried }: Kept): Promise<number> {
  const digests = entries.map((entry) => digestOf(yardId, entry));
  const put = entries.map((entry, nth) => ({ ...entry, digest: digests[nth]!.toString('hex') }));
  const [{ seq }] = (await em.query(
    `with yard_now as (
       update yard set seq = seq + $2, record_nth = record_nth + $6, record_link = case when $6 = 0 then record_link else sha256(record_link || $7::bytea || coalesce(
           (select string_agg(digest, '' order by kind collate "C", id) from kept_fact where yard_id = $1 and nth is null and written_in = pg_current_xact_id()), '')) end
       where id = $1 returning seq, record_nth, record_link
     ), written as (
       insert into outbox (yard_id, seq, event, at, done_at)
       select $1, yard_now.seq - $2 + nth, event, $3::timestamptz, case when $5::boolean then now() end
       from yard_now, jsonb_array_elements($4::jsonb) with ordinality as told (event, nth)
     ), linked as (
       update kept_fact set nth = yard_now.record_nth from yard_now where $6 > 0 and yard_id = $1 and nth is null and written_in = pg_current_xact_id()
     ), recorded as (
       insert into audit_entry (yard_id, nth, at, crew_member_id, device_id, command, command_key, body, digest, link)
       select $1, record_nth - $6 + entry.nth, entry.at, "personId", "deviceId", command, key, body, decode(digest, 'hex'), record_link
       from yard_now, rows from (jsonb_to_recordset($8::jsonb) as (at timestamptz, "personId" uuid, "deviceId" uuid, command text, key uuid, body jsonb, digest text))
         with ordinality as entry (at, "personId", "deviceId", command, key, body, digest, nth)
     ) select seq from yard_now`,
    [yardId, facts.length, at, JSON.stringify(facts), carried, entries.length, Buffer.concat(digests), JSON.stringify(put)],
  )) as [{ seq: string }];
  return Number(seq);
}

/** Puts down what has no command of its own. Takes the yard's row: `holdYard` first where other rows are taken before it. */
export async function recordAlone(em: EntityManager, yardId: YardId, entry: Entry): Promise<void> {
  await keep(em, yardId, { facts: [], entries: [entry], at: entry.at, carried: false });
}

/**
 * Holds other changes of this yard back until the transaction ends. Taken before anything of the yard is: two that take the
 * yard and its parts crosswise wait for each other for ever. No key update: a command's key refers to the yard already, and
 * two commands that want more would wait so too.
 */
export async function holdYard(em: EntityManager, yardId: YardId): Promise<void> {
  await em.query('select 1 from yard where id = $1 for no key update', [yardId]);
}

@Injectable()
export class Deeds {
  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
  ) {}

  /** Runs `work` in one transaction and writes what it told; an error leaves nothing behind. */
  run<T>(yardId: YardId, work: (deed: Deed) => Promise<T>): Promise<T> {
    return this.database.transaction(async (em) => {
      const deed = new Deed(em, yardId, this.clock.now(yardId), this.clock.aheadS(yardId));
      const result = await work(deed).catch(async (error: unknown) => {
        await deed.written(); // After a write that failed every question fails: that write says why.
        throw error;
      });
      await deed.written();
      await deed.writeOutbox();
      return result;
    });
  }
}
