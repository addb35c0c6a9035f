import { afterEach, beforeEach, expect, it } from 'vitest';
import { Ground, layOn, lightPit, until } from './several-houses.js';

let ground: Ground;
beforeEach(async () => {
  ground = await Ground.open();
});
afterEach(() => ground.close());

/** Who looks at food just now. */
const taker = async () => (await ground.query<{ taken_by: string | null }>(`select taken_by from work_waiting where kind = 'food-look' and lease_until > clock_timestamp()`))[0]?.taken_by ?? undefined;
const forecast = async () => (await ground.query<{ id: string }>('select id from cook where forecast is not null')).map(({ id }) => id);

it('work under way in a process that is killed is done by the other', async () => {
  const one = await ground.house();
  await one.firstRun();
  const pitId = await lightPit(one);
  const letGo = await ground.hold('food_limits');
  const cookId = await layOn(one, pitId);
  await until(async () => (await taker()) !== undefined, 'the look');
  const first = await taker();
  await ground.house();
  await one.end('SIGKILL');
  const killedAt = Date.now();
  await until(async () => ((await taker()) ?? first) !== first, 'the look of the other process');
  console.info(`taken over ${((Date.now() - killedAt) / 1000).toFixed(1)} s after the kill (asked: under 10 s)`);
  expect(await forecast()).toEqual([]);
  await letGo();
  await until(async () => (await forecast()).includes(cookId), 'the forecast');
  await until(async () => (await ground.query('select 1 from work_waiting')).length === 0, 'the end of the work');
});
