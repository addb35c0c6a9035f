import { type EpochS, epochS } from '@stokehold/domain/quantity';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { Clock, Deeds, Outbox, type TakenWork, WorkQueue } from './index.js';
import { openTestHouse, type TestHouse } from './testing.js';

let house: TestHouse;
let queues: WorkQueue[];
let done: { by: number; given: unknown; ended: boolean }[];
let during: (work: TakenWork, by: number) => Promise<void>;

/** A process of the house, as far as work is concerned: it looks for itself, and hears what was told in its own deeds. */
function process(outdatedByNext: boolean): WorkQueue {
  const queue = new WorkQueue(house.database, house.app.get(Clock), house.app.get(Outbox));
  const by = queues.push(queue) - 1;
  queue.serve('food-look', {
    do: async (work) => {
      await during(work, by);
      done.push({ by, given: work.given, ended: work.ended.aborted });
    },
    outdatedByNext,
  });
  return queue;
}
const wants = (queue: WorkQueue, given?: unknown) =>
  house.app.get(Outbox).carryOut(house.yardId, async (deed) => {
    queue.want(deed, 'food-look', given);
    deed.tell({ kind: 'weather-recorded' });
  });
const rows = async () => (await house.database.query('select nth::int, tries, taken_by, lease_until from work_waiting')) as { nth: number; tries: number; taken_by: string | null; lease_until: Date | null }[];
/** As if so much time had gone by for what waits. */
const pass = (seconds: number) => house.database.query(`update work_waiting set wanted_at = wanted_at - $1 * interval '1 second', lease_until = lease_until - $1 * interval '1 second'`, [seconds]);
function gate(): { readonly opened: Promise<void>; open: () => void } {
  let open = () => {};
  const opened = new Promise<void>((resolve) => (open = resolve));
  return { opened, open };
}

beforeEach(async () => {
  house = await openTestHouse([]);
  house.app.get(Clock).takeOwnTime(house.yardId);
  queues = [];
  done = [];
  during = async () => {};
});
afterEach(async () => {
  await Promise.all(queues.map((queue) => queue.beforeApplicationShutdown()));
  await house.close();
});

it('is done once, with what was given, after the deed that asked for it, by the process that asked', async () => {
  const [one, two] = [process(false), process(false)];
  two.onApplicationBootstrap();
  await wants(one, { pits: new Map([['bess', 3]]), at: 7 });
  await one.idle('food-look');
  expect(done).toEqual([{ by: 0, given: { pits: new Map([['bess', 3]]), at: 7 }, ended: false }]);
  expect(await rows()).toEqual([]);
});
it('is not wanted when its deed fails', async () => {
  const one = process(false);
  const failing = house.app.get(Deeds).run(house.yardId, async (deed) => {
    one.want(deed, 'food-look');
    await deed.written();
    throw new Error('the deed fails');
  });
  await expect(failing).rejects.toThrow('the deed fails');
  expect(await rows()).toEqual([]);
});
it('wanted again while it is done it follows, once', async () => {
  const one = process(false);
  const { opened, open } = gate();
  during = () => opened;
  await wants(one, 1);
  await wants(one, 2);
  await wants(one, 3);
  open();
  await one.idle('food-look');
  expect(done.map(({ given }) => given)).toEqual([1, 3]);
  expect(await rows()).toEqual([]);
});
it('what a newer one makes worthless is told so at its next beat, and the newer one is done', async () => {
  const [one, two] = [process(true), process(true)];
  const { opened, open } = gate();
  during = async ({ given, ended }) => {
    if (given === 'old') await new Promise<void>((resolve) => ended.addEventListener('abort', () => resolve()));
    else await opened;
  };
  await wants(one, 'old');
  await wants(two, 'new');
  open();
  await one.idle('food-look');
  await two.idle('food-look');
  expect(done).toEqual(expect.arrayContaining([{ by: 0, given: 'old', ended: true }, { by: 1, given: 'new', ended: false }]));
  expect(done).toHaveLength(2);
  expect(await rows()).toEqual([]);
});
it('withdrawn it is ended, and nothing of it waits', async () => {
  const one = process(true);
  during = ({ ended }) => new Promise((resolve) => ended.addEventListener('abort', () => resolve()));
  await wants(one);
  await house.app.get(Outbox).carryOut(house.yardId, async (deed) => one.withdraw(deed, 'food-look'));
  await one.idle('food-look');
  expect(done).toMatchObject([{ ended: true }]);
  expect(await rows()).toEqual([]);
});
it('of a process that fell silent it is another’s within seconds', async () => {
  const [one, two] = [process(false), process(false)];
  await house.database.query(
    `insert into work_waiting (yard_id, kind, nth, wanted_at, asked_by, only_there, taken_by, lease_until, tries) values ($1, 'food-look', 1, now(), gen_random_uuid(), false, gen_random_uuid(), now() + interval '6 s', 1)`,
    [house.yardId],
  );
  for (const queue of [one, two]) queue.onApplicationBootstrap();
  await expect.poll(() => done.length, { timeout: 15_000 }).toBe(1);
  expect(await rows()).toEqual([]);
});
it('that failed is tried again after a while, and left aside after five times until it is wanted anew', async () => {
  const one = process(false);
  during = () => Promise.reject(new Error('it fails'));
  await wants(one);
  one.onApplicationBootstrap();
  for (let tries = 1; tries <= 5; tries += 1) {
    await expect.poll(rows, { timeout: 5000 }).toMatchObject([{ tries, taken_by: null, lease_until: expect.any(Date) }]);
    await pass(60);
  }
  during = async () => {};
  await one.idle('food-look');
  expect(done).toEqual([]);
  await wants(one);
  await one.idle('food-look');
  expect(done).toHaveLength(1);
});
it('of a night whose clock only one process knows stays there', async () => {
  const [one, two] = [process(false), process(false)];
  house.app.get(Clock).giveOwnTime(house.yardId, { now: (): EpochS => epochS(house.now), speed: 10 });
  await one.beforeApplicationShutdown();
  await wants(one);
  await pass(3600);
  two.onApplicationBootstrap();
  await new Promise((resolve) => setTimeout(resolve, 2500));
  expect(done).toEqual([]);
  expect(await rows()).toHaveLength(1);
});
