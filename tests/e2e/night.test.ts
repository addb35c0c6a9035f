import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BOARD, BuiltHouse, openBrowser, PHONE, Visitor } from './house.js';
import { enrolledPage, type OneNight, setUpNight, signInToRound } from './one-night.js';

interface State {
  readonly plan: { readonly madeAt: string; readonly assignments: readonly { readonly work: { readonly kind: string; readonly pitId?: string; readonly nth?: number } }[] } | null;
  readonly wood: { readonly lots: readonly { readonly burned: number; readonly onCarts: number }[]; readonly splitsLeft: number };
  readonly pits: readonly { readonly pit: { readonly name: string }; readonly checks: readonly { readonly splits: number; readonly bed: string }[] }[];
}

let house: BuiltHouse;
let browser: Browser;
let manager: Visitor;
let wall: Page;
let phone: Page;
let ids: OneNight['ids'];
const cost = async () => (await manager.get<{ totalCents: number }>(`/services/${ids.service}/cost`)).totalCents;

beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  ({ manager, ids } = await setUpNight(house));
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

it('a wall is enrolled by its code and shows the pit', async () => {
  wall = await enrolledPage({ house, browser, manager, kind: 'wall', viewport: BOARD });
  await wall.waitForURL('**/wall');
  await wall.getByText('Bess').first().waitFor();
});

it('a cook signs in on a phone, records the next check in four touches, and it is on the wall', async () => {
  phone = await enrolledPage({ house, browser, manager, kind: 'hand', viewport: PHONE });
  await signInToRound(phone);

  const before = await manager.get<State>('/state');
  const costBefore = await cost();
  const stripe = wall.locator(`[data-row="${ids.pit}"]`);
  const shownBefore = await stripe.innerHTML();
  await phone.getByRole('radio', { name: 'fair' }).click();
  await phone.getByRole('radio', { name: 'some' }).click();
  await phone.getByRole('radio', { name: 'two', exact: true }).click();
  await phone.getByRole('button', { name: /^Done/ }).click();
  await wall.waitForFunction(
    ([row, html]) => document.querySelector(`[data-row="${row}"]`)?.innerHTML !== html,
    [ids.pit, shownBefore] as const,
  );

  await expect.poll(async () => (await manager.get<State>('/state')).pits[0]?.checks.length).toBe(1);
  await expect.poll(async () => (await manager.get<State>('/state')).plan?.madeAt).not.toBe(before.plan?.madeAt);
  const after = await manager.get<State>('/state');
  expect(after.pits[0]?.checks[0]).toMatchObject({ bed: 'fair', splits: 2 });
  expect(after.wood.splitsLeft).toBe(before.wood.splitsLeft - 2);
  expect(after.wood.lots[0]).toMatchObject({ burned: 2, onCarts: 18 });
  expect(await cost()).toBeGreaterThan(costBefore);
}, 90_000);

it('after the house was killed and started again, everything acknowledged is there and the wall lives again by itself', async () => {
  const before = await manager.get<State>('/state');
  await house.killHard();
  await wall.getByText('No server', { exact: false }).first().waitFor();
  await house.start();
  const after = await manager.get<State>('/state');
  expect(after.pits[0]?.checks).toEqual(before.pits[0]?.checks);
  expect(after.wood.splitsLeft).toBe(before.wood.splitsLeft);
  await wall.getByText('No server', { exact: false }).first().waitFor({ state: 'detached' });
}, 90_000);

it('nobody who is not enrolled sees anything', async () => {
  const stranger = new Visitor(house);
  await expect(stranger.get('/state')).rejects.toThrow('device-unknown');
});
