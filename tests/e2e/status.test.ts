import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BuiltHouse, openBrowser, PHONE, type Visitor } from './house.js';
import { setUpNight } from './one-night.js';

let house: BuiltHouse;
let browser: Browser;
let page: Page;
let manager: Visitor;
beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  ({ manager } = await setUpNight(house));
  const context = await browser.newContext({ viewport: PHONE });
  await context.addCookies(manager.cookies);
  page = await context.newPage();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

const panel = (name: string) => page.getByRole('region', { name });

it('the manager finds the status among the screens, and reads what is wrong with what to do, and what works', async () => {
  await page.goto(`${house.url}/setup`);
  await page.getByRole('link', { name: 'Status' }).click();
  await panel('What works').getByRole('heading', { name: 'Database' }).waitFor();
  const backup = panel('What is wrong').getByRole('listitem').filter({ hasText: 'Backup' });
  expect(await backup.innerText()).toMatch(/needs a hand[\s\S]*None was taken[\s\S]*Still works:[\s\S]*To do:[\s\S]*npm run backup/);
  await panel('What works').getByText(/1 screen is open/).waitFor();
});

it('when the server is gone the page says so, with the age of what it shows, and is right again by itself', async () => {
  await house.killHard();
  const lost = panel('What is wrong').getByRole('listitem').filter({ hasText: 'The server does not answer this device' });
  await lost.waitFor();
  expect(await lost.innerText()).toMatch(/since \d\d:\d\d[\s\S]*What stands below is \d+ s old[\s\S]*Phones keep what is recorded/);
  await panel('What works').getByRole('heading', { name: 'Database' }).waitFor();
  await house.start();
  await lost.waitFor({ state: 'detached' });
  await panel('What works').getByRole('heading', { name: 'Program' }).waitFor();
});

it('a disk that is nearly full is told on the desk too, with the way there', async () => {
  await page.route('**/api/status', async (route) => {
    const answer = await route.fetch();
    const said = (await answer.json()) as { parts: { part: string }[] };
    const parts = said.parts.map((part) => (part.part === 'disk' ? { part: 'disk', state: 'limps', finding: 'disk-nearly-full', since: null, figures: { usedFrac: 0.913, leftBytes: 5.2e9 } } : part));
    await route.fulfill({ response: answer, json: { ...said, parts } });
  });
  await page.goto(`${house.url}/night`);
  const notice = page.getByRole('alert').filter({ hasText: 'disk' });
  expect(await notice.innerText()).toMatch(/91\s% full, 5\.2\sGB left/);
  await notice.getByRole('link').click();
  await panel('What is wrong').getByText(/Make room today/).waitFor();
});
