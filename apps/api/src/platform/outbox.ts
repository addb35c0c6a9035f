import { Injectable, type OnApplicationBootstrap, type BeforeApplicationShutdown } from '@nestjs/common';
import { type EventKind, type EventOf, type YardEvent, yardEvent } from '@stokehold/domain/contract';
import type { YardId } from '@stokehold/domain/quantity';
import { DataSource } from 'typeorm';
import { log } from './log.js';
import { lendMemory, YardMemory } from './remembered.js';
import { type Deed, Deeds, type Told } from './transaction.js';

/** What a fact causes here. It may run twice after a crash and must come out the same. */
export type Reaction<K extends EventKind> = (event: EventOf<K>, deed: Deed) => Promise<void>;
/** Every kind of event with its reactions, in order: an event left out does not compile. */
export type Reactions = { readonly [K in EventKind]: readonly Reaction<K>[] };
/** Told after an event and all it caused is committed. */
export type Listener = (yardId: YardId, seq: number, event: YardEvent) => Promise<void>;

/** Facts carried in one transaction, at most. */
const MOST_AT_ONCE = 50;
/** Yards that are carried at the same time, at most: each holds a connection while it waits for a thread, and people's commands need the others. */
const MOST_YARDS = 4;

/**
 * Carries facts from the transaction that told them to what they cause and to the screens, one after the other per yard.
 * What a fact causes is carried with it, in one transaction: either all of it has happened or none.
 */
@Injectable()
export class Outbox implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private reactions?: Reactions;
  private readonly listeners: Listener[] = [];
  private readonly followers: ((yardId: YardId) => void)[] = [];
  private readonly lines = new Map<YardId, Promise<void>>();
  private readonly poked = new Set<YardId>();
  private readonly memories = new Map<YardId, YardMemory>();
  private readonly slots: (() => void)[] = [];
  private carrying = 0;
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

  /** Called when all that was carried in a yard has been told. */
  follow(follower: (yardId: YardId) => void): void {
    this.followers.push(follower);
  }

  /** What an earlier run of the house told but did not finish is finished first. */
  async onApplicationBootstrap(): Promise<void> {
    const waiting = (await this.database.query('select distinct yard_id from outbox where done_at is null')) as { yard_id: YardId }[];
    for (const { yard_id } of waiting) this.poke(yard_id);
  }

  /** Before the database goes: what is under way is finished, what waits is carried by the next run. */
  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    await Promise.allSettled(this.lines.values());
  }

  /** There is something to carry; returns at once. */
  poke(yardId: YardId): void {
    if (this.poked.has(yardId)) return;
    this.poked.add(yardId);
    setImmediate(() => {
      if (!this.poked.has(yardId)) return;
      this.drain(yardId).catch((error: unknown) => log.error({ err: error, yardId }, 'the outbox stopped; the next poke tries again'));
    });
  }

  /** Whether this process carried the last fact of the yard, the one with this number: what it remembers of the yard still holds. */
  carriedLast(yardId: YardId, seq: number): boolean {
    return this.memories.get(yardId)?.isUpTo(seq) ?? false;
  }

  /** Carries everything that waits in this yard. */
  drain(yardId: YardId): Promise<void> {
    return this.inLine(yardId, () => this.carryAll(yardId));
  }

  /** Carries what was told to this process so far. */
  settle(yardId: YardId): Promise<void> {
    return this.poked.has(yardId) ? this.drain(yardId) : (this.lines.get(yardId) ?? Promise.resolve());
  }

  /** Lets the house itself do something in a yard, and carries what that causes in the same transaction, after what waits. */
  carryOut(yardId: YardId, work: (deed: Deed) => Promise<void>): Promise<void> {
    return this.inLine(yardId, () => this.carryAll(yardId, work));
  }

  private inLine(yardId: YardId, work: () => Promise<void>): Promise<void> {
    const run = (this.lines.get(yardId) ?? Promise.resolve()).then(() => this.inSlot(work));
    const line = run.catch(() => undefined).finally(() => {
      if (this.lines.get(yardId) === line) this.lines.delete(yardId);
    });
    this.lines.set(yardId, line);
    return run;
  }

  /** When fewer than `MOST_YARDS` are carried; those that wait go in their order. */
  private async inSlot(work: () => Promise<void>): Promise<void> {
    if (this.carrying >= MOST_YARDS) await new Promise<void>((free) => this.slots.push(free));
    else this.carrying += 1;
    try {
      await work();
    } finally {
      const next = this.slots.shift();
      if (next) next();
      else this.carrying -= 1;
    }
  }

  private async carryAll(yardId: YardId, work?: (deed: Deed) => Promise<void>): Promise<void> {
    this.poked.delete(yardId);
    while (!this.stopped) {
      const carried = await this.carry(yardId, MOST_AT_ONCE, work).catch((error: unknown) => this.carryFirst(yardId, error));
      if (carried < MOST_AT_ONCE) return;
    }
  }

  /** One fact that cannot be carried must not keep those before it. */
  private async carryFirst(yardId: YardId, error: unknown): Promise<number> {
    while ((await this.carry(yardId, 1)) === 1);
    throw error;
  }

  /**
   * Facts that wait, the first ones first, with all they cause, in one transaction; says how many waited. Another process
   * that carries the same facts is waited for: when it is done they no longer wait, when it died they are carried here.
   */
  private async carry(yardId: YardId, most: number, work?: (deed: Deed) => Promise<void>): Promise<number> {
    const memory = this.memories.get(yardId) ?? new YardMemory();
    this.memories.delete(yardId); // A deed that fails leaves nothing behind, no memories either.
    const { waiting, caused } = await this.deeds.run(yardId, async (deed) => {
      const { seq, waiting } = await takeWaiting(deed, most);
      memory.begin(seq, waiting);
      lendMemory(deed.em, memory);
      for (const { event } of waiting) await this.reactTo(event, deed);
      if (waiting.length < most) await work?.(deed);
      for (let nth = 0; nth < deed.facts.length; nth += 1) {
        memory.happened(deed.facts[nth]!.kind);
        await this.reactTo(deed.facts[nth]!, deed);
      }
      return { waiting, caused: await deed.writeOutbox({ carried: true }) };
    });
    memory.end(caused);
    this.memories.set(yardId, memory);
    for (const { seq, event } of [...waiting, ...caused]) for (const listener of this.listeners) await listener(yardId, seq, event);
    for (const follower of this.followers) follower(yardId);
    return waiting.length;
  }

  private async reactTo<K extends EventKind>(event: EventOf<K>, deed: Deed): Promise<void> {
    const all = (this.reactions?.[event.kind as K] ?? []) as readonly Reaction<K>[];
    for (const reaction of all) await reaction(event, deed);
  }
}

/** Facts that wait, locked and marked as carried: they are when this deed is done; and the number of the yard's last fact. */
async function takeWaiting({ em, yardId }: Deed, most: number): Promise<{ readonly seq: number; readonly waiting: Told[] }> {
  const [yard] = (await em.query(
    `with first as (select seq from outbox where yard_id = $1 and done_at is null order by seq limit $2 for update),
       taken as (update outbox set done_at = now() from first where yard_id = $1 and outbox.seq = first.seq returning outbox.seq, event)
     select yard.seq, (select coalesce(json_agg(taken order by taken.seq), '[]') from taken) as waiting from yard where id = $1`,
    [yardId, most],
  )) as { readonly seq: string; readonly waiting: readonly { readonly seq: number; readonly event: unknown }[] }[];
  return { seq: Number(yard?.seq ?? 0), waiting: (yard?.waiting ?? []).map(({ seq, event }) => ({ seq, event: yardEvent.parse(event) })) };
}
