import type { EventKind } from '@stokehold/domain/contract';
import type { EntityManager } from 'typeorm';
import type { Told } from './transaction.js';

interface Answer {
  readonly to: Remembered<unknown>;
  readonly given: Promise<unknown>;
}

/**
 * What was asked about one yard while facts were carried, and still holds: nothing has happened in the yard since that would
 * change it. Every change of a yard is told as a fact with a number, so whoever knows all numbers knows what changed.
 */
export class YardMemory {
  /** The last fact that is taken into account; what came after it unseen makes all of this worthless. */
  private seq = -1;
  private readonly answers = new Map<string, Answer>();

  /** Takes note of where the yard stands when a deed begins, and of the facts that wait to be carried in it. */
  begin(seq: number, waiting: readonly Told[]): void {
    const isAll = waiting.length === seq - this.seq && waiting.every((told, nth) => told.seq === this.seq + 1 + nth);
    if (!isAll) this.answers.clear();
    for (const { event } of waiting) this.happened(event.kind);
    this.seq = seq;
  }

  happened(kind: EventKind): void {
    for (const [key, { to }] of this.answers) if (to.until.includes(kind)) this.answers.delete(key);
  }

  /** The deed is done, and told this. */
  end(told: readonly Told[]): void {
    const [first] = told;
    if (first && first.seq !== this.seq + 1) this.answers.clear();
    this.seq = told.at(-1)?.seq ?? this.seq;
  }

  isUpTo(seq: number): boolean {
    return this.seq === seq;
  }

  answer<T>(to: Remembered<T>, key: string): Promise<T> | undefined {
    return this.answers.get(`${to.id} ${key}`)?.given as Promise<T> | undefined;
  }

  keep<T>(to: Remembered<T>, key: string, given: Promise<T>): void {
    this.answers.set(`${to.id} ${key}`, { to: to as Remembered<unknown>, given });
  }

  forget(to: Remembered<never>): void {
    for (const [key, answer] of this.answers) if (answer.to.id === to.id) this.answers.delete(key);
  }
}

/** The memories lent to deeds that carry facts. */
const lent = new WeakMap<EntityManager, YardMemory>();
export const lendMemory = (em: EntityManager, memory: YardMemory): void => void lent.set(em, memory);

/**
 * Answers of the database that one transaction asks for again and again, since everything that a fact causes happens in one:
 * the first answer holds until something of it is written. Where facts are carried it holds beyond the transaction, until one
 * of the kinds of facts that change it. Outside a transaction nothing is remembered.
 */
export class Remembered<T> {
  private static made = 0;
  readonly id = (Remembered.made += 1);
  private readonly answers = new WeakMap<EntityManager, Map<string, Promise<T>>>();

  /** @param until kinds of facts that change the answers; with none, they are not remembered beyond a transaction */
  constructor(readonly until: readonly EventKind[] = []) {}

  /** The answer to the question that `key` stands for; asked of the database only when it is not remembered. */
  once(em: EntityManager, key: string, ask: () => Promise<T>): Promise<T> {
    if (!em.queryRunner?.isTransactionActive) return ask();
    const known = this.answers.get(em) ?? new Map<string, Promise<T>>();
    this.answers.set(em, known);
    const memory = this.until.length > 0 ? lent.get(em) : undefined;
    const answer = known.get(key) ?? memory?.answer(this, key) ?? ask();
    known.set(key, answer);
    memory?.keep(this, key, answer);
    return answer;
  }

  /** To be called before what was asked is written, and when a lock was waited for. */
  forget(em: EntityManager): void {
    this.answers.delete(em);
    lent.get(em)?.forget(this as unknown as Remembered<never>);
  }
}
