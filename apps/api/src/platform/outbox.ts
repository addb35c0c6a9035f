import { Injectable, type OnApplicationBootstrap, type BeforeApplicationShutdown } from '@nestjs/common';
import { type EventKind, type EventOf, type YardEvent, yardEvent } from '@stokehold/domain/contract';
import type { YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { log } from './log.js';
import { type Deed, Deeds } from './transaction.js';

/** What a fact causes here. It may run twice after a crash and must come out the same. */
export type Reaction<K extends EventKind> = (event: EventOf<K>, deed: Deed) => Promise<void>;
/** Every kind of event with its reactions, in order: an event left out does not compile. */
export type Reactions = { readonly [K in EventKind]: readonly Reaction<K>[] };
/** Told after an event and all it caused is committed. */
export type Listener = (yardId: YardId, seq: number, event: YardEvent) => Promise<void>;

/** Carries facts from the transaction that told them to what they cause and to the screens, one after the other per yard. */
@Injectable()
export class Outbox implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private reactions?: Reactions;
  private readonly listeners: Listener[] = [];
  private readonly draining = new Map<YardId, Promise<void>>();
  private readonly poked = new Set<YardId>();
  private stopped = false;

  constructor(
    private readonly deeds: Deeds,
    private readonly database: DataSource,
  ) {}

  react(reactions: Reactions): void {
    this.reactions = reactions;
  }

  listen(listener: Listener): void {
    this.listeners.push(listener);
  }

  /** What an earlier run of the house told but did not finish is finished first. */
  async onApplicationBootstrap(): Promise<void> {
    const waiting = (await this.database.query('select distinct yard_id from outbox where done_at is null')) as { yard_id: YardId }[];
    for (const { yard_id } of waiting) this.poke(yard_id);
  }

  /** Before the database goes: what is under way is finished, what waits is carried by the next run. */
  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    await Promise.allSettled(this.draining.values());
  }

  /** There may be something to carry; returns at once. */
  poke(yardId: YardId): void {
    this.drain(yardId).catch((error: unknown) => log.error({ err: error, yardId }, 'the outbox stopped; the next poke tries again'));
  }

  /** Carries everything that waits in this yard, and is done when nothing waits any more. */
  drain(yardId: YardId): Promise<void> {
    this.poked.add(yardId);
    const underWay = this.draining.get(yardId);
    if (underWay) return underWay;
    const run = this.carryAll(yardId).finally(() => {
      this.draining.delete(yardId);
      if (this.poked.has(yardId)) this.poke(yardId);
    });
    this.draining.set(yardId, run);
    return run;
  }

  private async carryAll(yardId: YardId): Promise<void> {
    while (this.poked.delete(yardId)) {
      while (!this.stopped && (await this.carryNext(yardId)));
    }
  }

  /**
   * One event with all it causes, in one transaction; false when no more waits. Another process that carries the same event
   * is waited for: when it is done the event is no longer waiting, when it died the event is carried here.
   */
  private async carryNext(yardId: YardId): Promise<boolean> {
    const carried = await this.deeds.run(yardId, async (deed) => {
      const [next] = (await deed.em.query(
        `select seq, event, exists (select from outbox as later where later.yard_id = $1 and later.done_at is null and later.seq > outbox.seq) as more
         from outbox where yard_id = $1 and done_at is null order by seq limit 1 for update`,
        [yardId],
      )) as { seq: string; event: unknown; more: boolean }[];
      if (!next) return undefined;
      const event = yardEvent.parse(next.event);
      await this.reactTo(event, deed);
      await deed.em.query('update outbox set done_at = now() where yard_id = $1 and seq = $2', [yardId, next.seq]);
      return { seq: Number(next.seq), event, more: next.more || deed.hasTold };
    });
    if (!carried) return false;
    for (const listener of this.listeners) await listener(yardId, carried.seq, carried.event);
    return carried.more;
  }

  private async reactTo<K extends EventKind>(event: EventOf<K>, deed: Deed): Promise<void> {
    const all = (this.reactions?.[event.kind as K] ?? []) as readonly Reaction<K>[];
    for (const reaction of all) await reaction(event, deed);
  }
}
