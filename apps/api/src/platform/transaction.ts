import { Injectable } from '@nestjs/common';
import type { YardEvent } from '@stokehold/domain/contract';
import { type EpochS, toIso, type YardId } from '@stokehold/domain/quantity';
import { DataSource, type EntityManager } from 'typeorm';
import { Clock } from './clock.js';

/** One transaction of one yard: what is written in it and the facts it tells stand or fall together. */
export class Deed {
  private readonly told: YardEvent[] = [];

  constructor(
    readonly em: EntityManager,
    readonly yardId: YardId,
    /** The yard's time at which the deed began. */
    readonly now: EpochS,
  ) {}

  /** Whether anything was told so far. */
  get hasTold(): boolean {
    return this.told.length > 0;
  }

  /** Tells a fact to the house; it reaches the outbox when the deed is done. */
  tell(event: YardEvent): void {
    this.told.push(event);
  }

  /**
   * Gives each fact its number in the yard. The yard's row stays locked until the transaction ends, so that numbers
   * become visible in their order and without gaps.
   */
  async writeOutbox(): Promise<void> {
    if (this.told.length === 0) return;
    await this.em.query(
      `with yard_seq as (update yard set seq = seq + $2 where id = $1 returning seq)
       insert into outbox (yard_id, seq, event, at)
       select $1, yard_seq.seq - $2 + nth, event, $3::timestamptz from yard_seq, jsonb_array_elements($4::jsonb) with ordinality as told (event, nth)`,
      [this.yardId, this.told.length, toIso(this.now), JSON.stringify(this.told)],
    );
  }
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
      const result = await work(deed);
      await deed.writeOutbox();
      return result;
    });
  }
}
