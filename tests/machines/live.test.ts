import { afterEach, beforeEach, expect, it } from 'vitest';
import { checkFire, Ground, lightPit, openWall, seqOf, until, type Wall } from './several-houses.js';

let ground: Ground;
const walls: Wall[] = [];
beforeEach(async () => {
  ground = await Ground.open();
});
afterEach(async () => {
  for (const { socket } of walls.splice(0)) socket.close();
  await ground.close();
});

async function twoHouses() {
  const one = await ground.house();
  await one.firstRun();
  const two = (await ground.house()).as(one.person);
  const pitId = await lightPit(one);
  for (const house of [one, two]) walls.push(await openWall(house));
  return { one, two, pitId };
}
/** Each wall heard every number once and in order, up to the last of the yard. */
async function expectAllHeard(seq: number): Promise<void> {
  for (const { changes } of walls) {
    await until(() => changes.at(-1)?.seq === seq, `number ${seq}`);
    const numbers = changes.map((change) => change.seq);
    expect(numbers).toEqual(numbers.map((_, nth) => numbers[0]! + nth));
  }
}

it('checks told to either process reach the walls of both: every number once and in order, and not with the beat only', async () => {
  const { one, two, pitId } = await twoHouses();
  const [, far] = walls as [Wall, Wall];
  await until(async () => {
    await checkFire(one, pitId);
    return far.pushedBetweenBeats > 1;
  }, 'news between two beats');
  await Promise.all(Array.from({ length: 20 }, (_, nth) => checkFire(nth % 2 === 0 ? one : two, pitId)));
  await until(async () => (await ground.query('select 1 from outbox where done_at is null')).length === 0, 'all carried');
  await expectAllHeard(await seqOf(two));
});

it('with Redis gone both processes live on, and each wall still hears all, with the beat', async () => {
  const { one, two, pitId } = await twoHouses();
  ground.cutRedis();
  for (let nth = 0; nth < 10; nth += 1) await checkFire(nth % 2 === 0 ? one : two, pitId);
  await until(async () => (await ground.query('select 1 from outbox where done_at is null')).length === 0, 'all carried');
  await expectAllHeard(await seqOf(one));
  expect((await one.ready()).said + (await two.ready()).said).toContain('Redis does not answer');
});
