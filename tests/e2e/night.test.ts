import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BOARD, BuiltHouse, openBrowser, PHONE, Visitor } from './house.js';

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
const ids = { pit: randomUUID(), lot: randomUUID(), service: randomUUID(), cook: randomUUID() };
const at = (hours: number) => `${new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 19)}Z`;
const cost = async () => (await manager.get<{ totalCents: number }>(`/services/${ids.service}/cost`)).totalCents;

/** What a manager sets up before the night: a yard, a pit that burns, wood on its cart, and a cook on the pit. */
async function setUpNight(): Promise<void> {
  const yard = {
    name: 'Saltmarsh Yard', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 30, planHeightM: 20, planTopDeg: 0,
    woodPlace: { xM: 15, yM: 18 }, walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
  };
  const me = await manager.post<{ person: { id: string } }>('/first-run', {
    token: house.firstRunToken, yard, manager: { name: 'Renske', pin: '482913', language: 'en' }, deviceName: 'Desk',
  });
  const band = { lowC: 121, highC: 127 };
  await manager.command('/pits', {
    pit: {
      id: ids.pit, name: 'Bess', xM: 5, yM: 5, fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.3, chamberDiameterM: 0.76, fireboxLengthM: 0.61,
      fireboxDiameterM: 0.61, steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 0.76 }, { lengthM: 0.76 }], probes: [], band, retired: false,
    },
  });
  await manager.command('/lots', {
    lot: { id: ids.lot, name: 'Oak', species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: at(-48), priceCents: 12_000 }, pieces: 80,
  });
  await manager.command('/wood-moves', { lotId: ids.lot, pitId: ids.pit, pieces: 20, way: 'pull' });
  await manager.command('/shifts', {
    id: randomUUID(), startsAt: at(-3), endsAt: at(7), people: [{ personId: me.person.id, startsAt: at(-3), endsAt: at(7), breaks: [] }],
    pits: [{ pitId: ids.pit, band, lightAt: at(-2.9) }],
  });
  await manager.command('/services', { service: { id: ids.service, name: 'Lunch', readyBy: at(9), portions: 60 } });
  await manager.command('/cooks', { cook: { id: ids.cook, cut: 'Brisket', shape: 'slab', pieces: 4, weightKg: 24, serviceId: ids.service, comesOffAt: null } });
  await manager.command('/placements', { cookId: ids.cook, lies: [{ pitId: ids.pit, zone: 1, pieces: 4 }] });
}

/** Opens a page on a device of this kind, enrolled by its one-time code as a person would. */
async function enrolledPage(kind: 'wall' | 'hand', viewport: { width: number; height: number }): Promise<Page> {
  const { code } = await manager.command<{ code: string }>('/devices/codes', { kind });
  const page = await (await browser.newContext({ viewport })).newPage();
  await page.goto(`${house.url}/enrol#${code}`);
  await page.getByLabel('Name of this device').fill(kind === 'wall' ? 'Wall' : 'Phone');
  await page.getByRole('button', { name: 'Enrol' }).click();
  return page;
}

beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  manager = new Visitor(house);
  await setUpNight();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

it('a wall is enrolled by its code and shows the pit', async () => {
  wall = await enrolledPage('wall', BOARD);
  await wall.waitForURL('**/wall');
  await wall.getByText('Bess').first().waitFor();
});

it('a cook signs in on a phone, records the next check in four touches, and it is on the wall within a second', async () => {
  phone = await enrolledPage('hand', PHONE);
  await phone.getByRole('button', { name: 'Renske' }).click();
  for (const digit of '482913') await phone.getByRole('button', { name: digit, exact: true }).click();
  const signIn = phone.getByRole('button', { name: 'Sign in' });
  if (await signIn.isVisible().catch(() => false)) await signIn.click();
  await phone.waitForURL(/\/(round|night)$/);
  await phone.goto(`${house.url}/round`);
  await phone.getByRole('heading', { name: /Bess/ }).waitFor();

  const before = await manager.get<State>('/state');
  const costBefore = await cost();
  const stripe = wall.locator(`[data-row="${ids.pit}"]`);
  const shownBefore = await stripe.innerHTML();
  await phone.getByRole('radio', { name: 'fair' }).click();
  await phone.getByRole('radio', { name: 'some' }).click();
  await phone.getByRole('radio', { name: 'two' }).click();
  await phone.getByRole('button', { name: /^Done/ }).click();
  await wall.waitForFunction(
    ([row, html]) => document.querySelector(`[data-row="${row}"]`)?.innerHTML !== html,
    [ids.pit, shownBefore] as const,
    { timeout: 5000 },
  );

  await expect.poll(async () => (await manager.get<State>('/state')).pits[0]?.checks.length, { timeout: 5000 }).toBe(1);
  await expect.poll(async () => (await manager.get<State>('/state')).plan?.madeAt, { timeout: 10_000 }).not.toBe(before.plan?.madeAt);
  const after = await manager.get<State>('/state');
  expect(after.pits[0]?.checks[0]).toMatchObject({ bed: 'fair', splits: 2 });
  expect(after.wood.splitsLeft).toBe(before.wood.splitsLeft - 2);
  expect(after.wood.lots[0]).toMatchObject({ burned: 2, onCarts: 18 });
  expect(await cost()).toBeGreaterThan(costBefore);
}, 90_000);

it('after the house was killed and started again, everything acknowledged is there and the wall lives again by itself', async () => {
  const before = await manager.get<State>('/state');
  await house.killHard();
  await wall.getByText('No server', { exact: false }).first().waitFor({ timeout: 8000 });
  await house.start();
  const after = await manager.get<State>('/state');
  expect(after.pits[0]?.checks).toEqual(before.pits[0]?.checks);
  expect(after.wood.splitsLeft).toBe(before.wood.splitsLeft);
  await wall.getByText('No server', { exact: false }).first().waitFor({ state: 'detached', timeout: 20_000 });
}, 90_000);

it('nobody who is not enrolled sees anything', async () => {
  const stranger = new Visitor(house);
  await expect(stranger.get('/state')).rejects.toThrow('device-unknown');
});
