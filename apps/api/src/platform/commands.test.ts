import { Controller, Inject, Module } from '@nestjs/common';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { randomUUID } from 'node:crypto';
import { Commands } from './commands.js';
import { Outbox } from './outbox.js';
import { refused } from './refusals.js';
import { openTestHouse, type TestHouse } from './testing.js';

@Controller()
class NoRoutes {
  constructor(@Inject(Commands) readonly commands: Commands) {}
}
@Module({ controllers: [NoRoutes] })
class Nothing {}

let house: TestHouse;
const carried: { seq: number; kind: string }[] = [];
beforeAll(async () => {
  house = await openTestHouse([Nothing]);
  house.app.get(Outbox).listen(async (_, seq, event) => void carried.push({ seq, kind: event.kind }));
});
afterAll(() => house.close());

const count = async (table: string) => Number(((await house.database.query(`select count(*) as n from ${table}`)) as { n: string }[])[0]?.n);

it('a command is carried out once, and the same key again brings the first answer', async () => {
  const commands = house.app.get(Commands);
  const command = { key: randomUUID(), said: 'hello' };
  let times = 0;
  const work = () =>
    commands.run(house.actor!, 'save-yard', command, async (deed) => {
      times++;
      deed.tell({ kind: 'weather-recorded' });
      return { answer: times };
    });
  expect(await work()).toEqual({ answer: 1 });
  expect(await work()).toEqual({ answer: 1 });
  await house.settle();
  expect(times).toBe(1);
  expect(await count('audit_entry')).toBe(1);
  expect(carried).toEqual([{ seq: 1, kind: 'weather-recorded' }]);
});

it('ten equal commands at once give one fact and ten equal answers', async () => {
  const commands = house.app.get(Commands);
  const command = { key: randomUUID(), said: 'at once' };
  const before = await count('audit_entry');
  const answers = await Promise.all(
    Array.from({ length: 10 }, (_, i) => commands.run(house.actor!, 'save-yard', command, async () => ({ answer: i }))),
  );
  expect(new Set(answers.map(({ answer }) => answer)).size).toBe(1);
  expect(await count('audit_entry')).toBe(before + 1);
});

it('the same key with another body is refused', async () => {
  const commands = house.app.get(Commands);
  const key = randomUUID();
  await commands.run(house.actor!, 'save-yard', { key, said: 'one' } as { key: string }, async () => ({}));
  await expect(commands.run(house.actor!, 'save-yard', { key, said: 'two' } as { key: string }, async () => ({}))).rejects.toMatchObject({
    refusal: { code: 'key-reused' },
  });
});

it('a refused command leaves nothing behind, and its key stays free', async () => {
  const commands = house.app.get(Commands);
  const command = { key: randomUUID() };
  const before = [await count('audit_entry'), await count('outbox'), await count('command_key')];
  await expect(
    commands.run(house.actor!, 'save-yard', command, async (deed) => {
      deed.tell({ kind: 'weather-recorded' });
      return refused('lot-empty', 'Pull from another lot.');
    }),
  ).rejects.toMatchObject({ refusal: { code: 'lot-empty' } });
  expect([await count('audit_entry'), await count('outbox'), await count('command_key')]).toEqual(before);
  expect(await commands.run(house.actor!, 'save-yard', command, async () => ({ fine: true }))).toEqual({ fine: true });
});

it('facts told at the same time are carried in the order of their numbers, without a gap', async () => {
  const commands = house.app.get(Commands);
  carried.length = 0;
  await Promise.all(
    Array.from({ length: 20 }, () =>
      commands.run(house.actor!, 'save-yard', { key: randomUUID() }, async (deed) => {
        deed.tell({ kind: 'yard-set-up' });
        deed.tell({ kind: 'weather-recorded' });
        return {};
      }),
    ),
  );
  await house.settle();
  const numbers = carried.map(({ seq }) => seq);
  expect(numbers).toEqual(Array.from({ length: 40 }, (_, i) => (numbers[0] ?? 0) + i));
});
