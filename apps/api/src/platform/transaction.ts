import { Injectable } from '@nestjs/common';
import type { YardEvent } from '@stokehold/domain/contract';
import { type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock } from './clock.js';

/** A fact with its number in its yard. */
export interface Told {
  readonly seq: number;
  readonly event: YardEvent;
}

/** One transaction of one yard: what is written in it and the facts it tells stand or fall together. */
export class Deed {
  private told: YardEvent[] = [];
  private readonly writes: Promise<unknown>[] = [];

  constructor(
    readonly em: EntityManager,
    readonly yardId: YardId,
    /** The yard's time at which the deed began. */
    readonly now: EpochS,
  ) {}

  /** Facts told so far that are not in the outbox yet, in order; grows while one listens to it. */
  get facts(): readonly YardEvent[] {
    return this.told;
  }

  /** Tells a fact to the house; it reaches the outbox when the deed is done. */
  tell(event: YardEvent): void {
    this.told.push(event);
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
   * Gives each fact its number in the yard. The yard's row stays locked until the transaction ends, so that numbers
   * become visible in their order and without gaps. Facts whose consequences were drawn in this deed wait for nobody.
   */
  async writeOutbox({ carried } = { carried: false }): Promise<Told[]> {
    const facts = this.told;
    if (facts.length === 0) return [];
    this.told = [];
    const [{ seq }] = (await this.em.query(
      `with yard_seq as (update yard set seq = seq + $2 where id = $1 returning seq), written as (
         insert into outbox (yard_id, seq, event, at, done_at)
         select $1, yard_seq.seq - $2 + nth, event, $3::timestamptz, case when $5::boolean then now() end
         from yard_seq, jsonb_array_elements($4::jsonb) with ordinality as told (event, nth)
       ) select seq from yard_seq`,
      [this.yardId, facts.length, toIso(this.now), JSON.stringify(facts), carried],
    )) as [{ seq: string }];
    return facts.map((event, nth) => ({ event, seq: Number(seq) - facts.length + 1 + nth }));
  }
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
      const deed = new Deed(em, yardId, this.clock.now(yardId));
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
