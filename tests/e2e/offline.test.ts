import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BuiltHouse, openBrowser, PHONE, type Visitor } from './house.js';
import { enrolledPage, type OneNight, setUpNight, signInToRound } from './one-night.js';

interface Check {
  readonly bed: string;
  readonly splits: number;
  readonly seenAt: string;
  readonly marks: readonly string[];
}
interface State {
  readonly pits: readonly { readonly checks: readonly Check[] }[];
}

let house: BuiltHouse;
let browser: Browser;
let manager: Visitor;
let ids: OneNight['ids'];
let phone: Page;
const recordedAt: number[] = [];

/** The rows that the server holds, in the order in which they were seen. */
const checks = () => manager.get<Check[]>(`/checks?pitId=${ids.pit}&since=${new Date(Date.now() - 3_600_000).toISOString().slice(0, 19)}Z`);
const kept = (page: Page, count: number) => page.getByText(`${count} kept on this phone`).waitFor();

async function recordCheck(page: Page, seen: { readonly bed?: string; readonly left: string; readonly put: string }): Promise<void> {
  if (seen.bed) await page.getByRole('radio', { name: seen.bed, exact: true }).click();
  await page.getByRole('radio', { name: seen.left, exact: true }).click();
  await page.getByRole('radio', { name: seen.put, exact: true }).click();
  recordedAt.push(Date.now());
  await page.getByRole('button', { name: /^Done/ }).first().click();
}

beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  ({ manager, ids } = await setUpNight(house));
  phone = await enrolledPage({ house, browser, manager, kind: 'hand', viewport: PHONE });
  await signInToRound(phone);
  await phone.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

it('without signal the round opens from the phone, shows what it last knew and says how old that is', async () => {
  // What the phone knows is kept when the page goes out of sight, as a pocketed phone does.
  await phone.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { value: 'hidden', configurable: true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await phone.waitForTimeout(300);
  await phone.context().setOffline(true);
  await phone.reload();
  await phone.getByRole('heading', { name: /Bess/ }).waitFor();
  await phone.getByText('No server').waitFor();
  await phone.getByText(/What you see is \d+ s old/).waitFor();
});

it('a check recorded without signal is taken back with one touch, and what was touched stands there again', async () => {
  await recordCheck(phone, { bed: 'full', left: 'most', put: 'raked' });
  recordedAt.pop();
  await kept(phone, 1);
  await phone.getByRole('button', { name: 'Undo' }).first().click();
  await phone.getByText('kept on this phone').waitFor({ state: 'detached' });
  expect(await phone.getByRole('radio', { name: 'full', exact: true }).getAttribute('aria-checked')).toBe('true');
});

it('a check recorded without signal is kept on the phone, and one that was begun outlives a killed page', async () => {
  await recordCheck(phone, { bed: 'low', left: 'coals', put: 'two' });
  await kept(phone, 1);
  await phone.getByRole('button', { name: 'Bess', exact: true }).click();
  await phone.getByRole('radio', { name: 'full', exact: true }).click();
  const context = phone.context();
  const killer = await context.newCDPSession(phone);
  const crashed = phone.waitForEvent('crash');
  // A page that is killed gives no answer to what killed it.
  void killer.send('Page.crash').catch(() => undefined);
  await crashed;
  const dead = phone;

  phone = await context.newPage();
  await dead.close();
  await phone.goto(`${house.url}/round`);
  await kept(phone, 1);
  expect(await phone.getByRole('radio', { name: 'full', exact: true }).getAttribute('aria-checked')).toBe('true');
  await recordCheck(phone, { left: 'most', put: 'raked' });
  await kept(phone, 2);
  expect((await manager.get<State>('/state')).pits[0]?.checks).toEqual([]);
});

it('with signal again, and a second tab open, each is taken once, in order, at the time it was recorded', async () => {
  const second = await phone.context().newPage();
  await second.goto(`${house.url}/round`);
  await kept(second, 2);
  await phone.context().setOffline(false);
  await expect.poll(async () => (await checks()).length).toBe(2);
  await phone.getByText('kept on this phone').waitFor({ state: 'detached' });
  await second.getByText('kept on this phone').waitFor({ state: 'detached' });
  const rows = await checks();
  expect(rows.map(({ bed, splits }) => ({ bed, splits }))).toEqual([{ bed: 'low', splits: 2 }, { bed: 'full', splits: 0 }]);
  rows.forEach(({ seenAt, marks }, nth) => {
    // Whole seconds travel; the phone's own clock is right, and hours without signal do not make it wrong.
    expect(Math.abs(Date.parse(seenAt) - (recordedAt[nth] ?? 0))).toBeLessThanOrEqual(5000);
    expect(marks).toEqual([]);
  });
  await second.close();
});

it('a house that answers one request a second gets all that a phone kept, in order, once', async () => {
  const kinds = [{ bed: 'low', put: 'two' }, { bed: 'fair', put: 'one' }, { bed: 'full', put: 'raked' }, { bed: 'low', put: 'one' }, { bed: 'fair', put: 'two' }];
  await phone.context().setOffline(true);
  for (const [nth, { bed, put }] of kinds.entries()) {
    await phone.getByRole('button', { name: 'Bess', exact: true }).click();
    await recordCheck(phone, { bed, left: 'some', put });
    await kept(phone, nth + 1);
  }
  await house.killHard();
  await house.start([], { STOKEHOLD_DEVICE_REQUESTS: '1' });
  let tooFast = 0;
  phone.on('response', (answer) => (tooFast += Number(answer.status() === 429)));
  await phone.context().setOffline(false);
  await phone.getByText('kept on this phone').waitFor({ state: 'detached', timeout: 60_000 });
  expect((await checks()).slice(2).map(({ bed }) => bed)).toEqual(kinds.map(({ bed }) => bed));
  expect(tooFast).toBeGreaterThan(0);
  await house.killHard();
  await house.start();
});

it('a phone without room says that nothing was recorded, and keeps what was touched', async () => {
  // As a browser refuses a write when the device is full.
  await phone.evaluate(() => {
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
    };
  });
  await phone.getByRole('button', { name: 'Bess', exact: true }).click();
  await recordCheck(phone, { bed: 'fair', left: 'some', put: 'one' });
  await phone.getByText('This phone has no room left').waitFor();
  expect(await phone.getByRole('radio', { name: 'fair', exact: true }).getAttribute('aria-checked')).toBe('true');
  expect(await checks()).toHaveLength(7);
});
