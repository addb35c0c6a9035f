import { type BeforeApplicationShutdown, Injectable, type OnApplicationBootstrap } from '@nestjs/common';
import type { YardId } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import { deserialize, serialize } from 'node:v8';
import { DataSource } from 'typeorm';
import { Clock } from './clock.js';
import { log } from './log.js';
import { Outbox } from './outbox.js';
import type { Deed } from './transaction.js';

export type WorkKind = 'better-plan' | 'food-look';

/** Work that this process has taken. */
export interface TakenWork {
  readonly yardId: YardId;
  /** What was given with it. */
  readonly given: unknown;
  /** Aborted when it is wanted no more, or taken by another: what it found is dropped. */
  readonly ended: AbortSignal;
}
export interface WorkDone {
  readonly do: (work: TakenWork) => Promise<void>;
  /** Work that is wanted again makes the one under way worthless; otherwise it follows it. */
  readonly outdatedByNext: boolean;
}

interface Row {
  readonly yard_id: YardId;
  readonly nth: string;
  readonly given: Buffer | null;
}
interface Hand {
  again: boolean;
  done: Promise<void>;
  working?: { readonly yardId: YardId; readonly ending: AbortController };
}

/** Whoever asked takes it first, for it remembers the yard; what still waits then is for any process. */
const ASKER_FIRST_S = 1;
const LOOK_MS = 1000;
/** A process that works says so again and again; when it does not, the work is another's. */
const BEAT_MS = 2000;
const LEASE_S = 6;
/** Work that failed is tried again after a while, and not for ever. */
const PAUSE_S = 30;
export const MOST_TRIES = 5;

const WANT = `insert into work_waiting (yard_id, kind, nth, given, wanted_at, asked_by, only_there, tries) values ($1, $2, 1, $3, clock_timestamp(), $4, $5, 0)
  on conflict (yard_id, kind) do update set nth = work_waiting.nth + 1, given = excluded.given, wanted_at = excluded.wanted_at, asked_by = excluded.asked_by, only_there = excluded.only_there, tries = 0,
    taken_by = case when $6::boolean then null else work_waiting.taken_by end,
    lease_until = case when $6::boolean or work_waiting.taken_by is null then null else work_waiting.lease_until end`;
const TAKE = `with next as (
    select yard_id from work_waiting where kind = $1 and tries < ${MOST_TRIES} and (lease_until is null or lease_until < clock_timestamp())
      and (asked_by = $2 or (not only_there and wanted_at < clock_timestamp() - interval '${ASKER_FIRST_S} s')) order by wanted_at, yard_id limit 1 for update skip locked
  ), taken as (
    update work_waiting set taken_by = $2, lease_until = clock_timestamp() + interval '${LEASE_S} s', tries = tries + 1 from next
    where work_waiting.yard_id = next.yard_id and kind = $1 returning work_waiting.yard_id, nth, given
  ) select * from taken`;
const BEAT = `with mine as (update work_waiting set lease_until = clock_timestamp() + interval '${LEASE_S} s' where yard_id = $1 and kind = $2 and taken_by = $3 returning 1) select * from mine`;
const DONE = `with done as (delete from work_waiting where yard_id = $1 and kind = $2 and taken_by = $3 and nth = $4)
  update work_waiting set taken_by = null, lease_until = null where yard_id = $1 and kind = $2 and taken_by = $3 and nth <> $4`;
const FAILED = `update work_waiting set taken_by = null, lease_until = case when nth = $4 then clock_timestamp() + interval '${PAUSE_S} s' end where yard_id = $1 and kind = $2 and taken_by = $3`;

/**
 * Work for which nobody waits: kept in the transaction of what asked for it, one of each kind in a yard, and taken by whichever
 * process of the house has a hand free; each has one for each kind. It may be done twice, when a process was silent, and must
 * come out the same. Work of a practice night stays with the process whose clock that night goes by.
 */
@Injectable()
export class WorkQueue implements OnApplicationBootstrap, BeforeApplicationShutdown {
  private readonly me = randomUUID();
  private readonly kinds = new Map<WorkKind, WorkDone>();
  private readonly hands = new Map<WorkKind, Hand>();
  /** Asked for in deeds of this process whose end was not heard yet. */
  private readonly asked = new Map<YardId, Set<WorkKind>>();
  private timer: NodeJS.Timeout | undefined;
  private stopped = false;

  constructor(
    private readonly database: DataSource,
    private readonly clock: Clock,
    outbox: Outbox,
  ) {
    outbox.follow((yardId) => {
      for (const kind of this.asked.get(yardId) ?? []) this.reach(kind);
      this.asked.delete(yardId);
    });
  }

  /** Says how work of a kind is done in this process. */
  serve(kind: WorkKind, done: WorkDone): void {
    this.kinds.set(kind, done);
  }

  /** Wants work done once this deed is. What is given is plain data. */
  want(deed: Deed, kind: WorkKind, given?: unknown): void {
    const { yardId } = deed;
    const bytes = given === undefined ? null : serialize(given);
    deed.alongside(deed.em.query(WANT, [yardId, kind, bytes, this.me, this.clock.hasOwnTime(yardId), this.kinds.get(kind)!.outdatedByNext]));
    this.asked.set(yardId, (this.asked.get(yardId) ?? new Set<WorkKind>()).add(kind));
  }

  /** What was asked for is wanted no more; under way here it is ended at once, elsewhere at its next beat. */
  withdraw(deed: Deed, kind: WorkKind): void {
    this.asked.get(deed.yardId)?.delete(kind);
    const working = this.hands.get(kind)?.working;
    if (working?.yardId === deed.yardId) working.ending.abort();
    deed.alongside(deed.em.query('delete from work_waiting where yard_id = $1 and kind = $2', [deed.yardId, kind]));
  }

  /** Resolves when this process has no work of this kind in hand and finds no more to take. */
  async idle(kind: WorkKind): Promise<void> {
    for (let hand = this.hands.get(kind); hand; hand = this.hands.get(kind)) await hand.done;
  }

  onApplicationBootstrap(): void {
    this.timer = setInterval(() => {
      for (const kind of this.kinds.keys()) this.reach(kind);
    }, LOOK_MS);
    this.timer.unref();
  }

  async beforeApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearInterval(this.timer);
    for (const { working } of this.hands.values()) working?.ending.abort();
    for (const kind of this.kinds.keys()) await this.idle(kind);
  }

  /** Takes work of this kind until none is left; where a hand is at it, it looks once more. */
  private reach(kind: WorkKind): void {
    const before = this.hands.get(kind);
    if (before) before.again = true;
    else if (!this.stopped) {
      const hand: Hand = { again: true, done: Promise.resolve() };
      this.hands.set(kind, hand);
      hand.done = this.work(kind, hand);
    }
  }

  private async work(kind: WorkKind, hand: Hand): Promise<void> {
    try {
      while (hand.again && !this.stopped) {
        hand.again = false;
        while (!this.stopped && (await this.next(kind, hand)));
      }
    } catch (error) {
      log.warn({ err: error, kind }, 'work that waits could not be taken; the next look tries again');
    } finally {
      this.hands.delete(kind);
    }
  }

  private async next(kind: WorkKind, hand: Hand): Promise<boolean> {
    const [row] = (await this.database.query(TAKE, [kind, this.me])) as Row[];
    if (!row) return false;
    const mine = [row.yard_id, kind, this.me];
    const ending = new AbortController();
    hand.working = { yardId: row.yard_id, ending };
    const beat = setInterval(() => void this.beat(mine).then((isMine) => isMine || ending.abort()), BEAT_MS);
    try {
      await this.kinds.get(kind)!.do({ yardId: row.yard_id, given: row.given ? deserialize(row.given) : undefined, ended: ending.signal });
      await this.database.query(DONE, [...mine, row.nth]);
    } catch (error) {
      log.error({ err: error, yardId: row.yard_id, kind }, 'work for which nobody waits failed; it is tried again after a while');
      await this.database.query(FAILED, [...mine, row.nth]);
    } finally {
      clearInterval(beat);
      delete hand.working;
    }
    return true;
  }

  /** A line that fails says nothing: the lease runs out by itself. */
  private beat(mine: readonly unknown[]): Promise<boolean> {
    return this.database.query(BEAT, [...mine]).then((rows: unknown[]) => rows.length > 0, () => true);
  }
}
