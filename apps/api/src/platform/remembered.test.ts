import type { EventKind } from '@stokehold/domain/contract';
import type { EntityManager } from 'typeorm';
import { expect, it } from 'vitest';
import { lendMemory, Remembered, YardMemory } from './remembered.js';
import type { Told } from './transaction.js';

/** A transaction that is open, as far as remembering looks at one. */
const open = () => ({ queryRunner: { isTransactionActive: true } }) as EntityManager;
const told = (seq: number, kind: EventKind) => ({ seq, event: { kind } }) as Told;

/** A question that counts how often it reaches the database. */
function asked(until: readonly EventKind[] = ['weather-recorded']) {
  const remembered = new Remembered<number>(until);
  let times = 0;
  return { remembered, ask: (em: EntityManager) => remembered.once(em, 'wind', async () => (times += 1)) };
}

/** One deed that carries `waiting` when the yard stands at `seq`, with what it tells. */
function deed(memory: YardMemory, seq: number, waiting: readonly Told[] = []): EntityManager {
  const em = open();
  memory.begin(seq, waiting);
  lendMemory(em, memory);
  return em;
}

it('within a transaction the first answer holds until it is forgotten, outside of one never', async () => {
  const { remembered, ask } = asked();
  const em = open();
  expect([await ask(em), await ask(em)]).toEqual([1, 1]);
  remembered.forget(em);
  expect(await ask(em)).toBe(2);
  const outside = {} as EntityManager;
  expect([await ask(outside), await ask(outside)]).toEqual([3, 4]);
});

it('from one carried deed to the next it holds until a fact that changes it', async () => {
  const { ask } = asked();
  const memory = new YardMemory();
  expect(await ask(deed(memory, 7))).toBe(1);
  memory.end([]);
  expect(await ask(deed(memory, 8, [told(8, 'lot-changed')]))).toBe(1);
  memory.end([told(9, 'plan-repaired')]);
  expect(await ask(deed(memory, 10, [told(10, 'weather-recorded')]))).toBe(2);
});

it('a fact that nobody here has seen makes all of it worthless', async () => {
  const { ask } = asked();
  const memory = new YardMemory();
  expect(await ask(deed(memory, 7))).toBe(1);
  memory.end([]);
  expect(await ask(deed(memory, 9, [told(9, 'lot-changed')]))).toBe(2);
  memory.end([told(11, 'plan-repaired')]); // 10 was told by another process meanwhile
  expect(await ask(deed(memory, 11))).toBe(3);
});

it('what was written in the deed itself is asked anew', async () => {
  const { remembered, ask } = asked();
  const memory = new YardMemory();
  expect(await ask(deed(memory, 7))).toBe(1);
  memory.end([]);
  const em = deed(memory, 7);
  expect(await ask(em)).toBe(1);
  remembered.forget(em);
  expect(await ask(em)).toBe(2);
});

it('an answer that no fact is named for ends with its transaction', async () => {
  const { ask } = asked([]);
  const memory = new YardMemory();
  expect([await ask(deed(memory, 7)), await ask(deed(memory, 7))]).toEqual([1, 2]);
});
