import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BOARD, BuiltHouse, openBrowser, PHONE, type Visitor } from './house.js';
import { type OneNight, setUpNight } from './one-night.js';
import { axeFindings, strayWords, vocabulary } from './screen-reading.js';

/** Names that the yard of these tests was given. */
const NAMES = ['Saltmarsh Yard', 'Renske', 'Bess', 'Oak', 'Lunch', 'Brisket', 'America/Chicago', 'Desk', 'Chromium', 'Linux'];

let house: BuiltHouse;
let browser: Browser;
let manager: Visitor;
let ids: OneNight['ids'];

beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  ({ manager, ids } = await setUpNight(house));
  await manager.command('/checks', { pitId: ids.pit, seenAt: new Date().toISOString(), bed: 'fair', left: 'some', raked: false, splits: 1, fireEndTempC: 125, stackEndTempC: 121 });
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

interface Look {
  readonly language: 'en' | 'es';
  readonly theme: 'night' | 'day';
  readonly viewport: { readonly width: number; readonly height: number };
}

/** A browser in which the manager is signed in and which shows the board in this language and light. */
async function opened({ language, theme, viewport }: Look): Promise<BrowserContext> {
  const context = await browser.newContext({ viewport, serviceWorkers: 'block', reducedMotion: 'reduce' });
  await context.addCookies(manager.cookies);
  await context.addInitScript(([kept, spoken]) => {
    localStorage.setItem('theme', kept);
    localStorage.setItem('language', spoken);
  }, [theme, language] as const);
  await context.route('**/api/me', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, body: (await answer.text()).replaceAll(/"language":"(en|es)"/g, `"language":"${language}"`) });
  });
  return context;
}

const NIGHT = ['now', 'shift', 'crew', 'cooks', 'services', 'tasks', 'wind', 'handover', 'tomorrow'].map((show) => `/night?show=${show}`);
const SETUP = ['guide', 'plan', 'yard', 'pits', 'crew', 'pay', 'devices'].map((show) => `/setup?show=${show}`);
const addresses = () => [
  '/wall', '/round', ...NIGHT, `/pit/${ids.pit}`, '/loading', '/food', `/food/${ids.cook}`, '/woodyard', '/service', `/service/${ids.service}`,
  ...SETUP, '/records', '/status', '/print', '/sign-in', '/enrol', '/first-run#a-token',
];

async function lookAt(page: Page, address: string): Promise<void> {
  await page.goto(`${house.url}${address}`);
  await page.locator('main').first().waitFor();
  await page.waitForLoadState('networkidle').catch(() => undefined);
  await page.waitForTimeout(300);
}

describe.each<Look>([
  { language: 'en', theme: 'night', viewport: PHONE },
  { language: 'es', theme: 'day', viewport: BOARD },
])('every screen, $language, by $theme, $viewport.width px wide', (look) => {
  it('meets WCAG 2.2 AA as far as axe-core can tell, says nothing that is not in the word list, and does not scroll sideways', async () => {
    const context = await opened(look);
    const page = await context.newPage();
    const known = await vocabulary(look.language);
    const found: Record<string, string[]> = {};
    for (const address of addresses()) {
      await lookAt(page, address);
      const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      const problems = [...(await axeFindings(page)), ...(await strayWords(page, known, NAMES)), ...(sideways > 0 ? [`${sideways} px wider than the screen`] : [])];
      if (problems.length > 0) found[address] = problems;
    }
    await context.close();
    expect(found).toEqual({});
  }, 300_000);
});

it('three sheets for the wall come out of the printer as three pages', async () => {
  const context = await opened({ language: 'en', theme: 'night', viewport: BOARD });
  const page = await context.newPage();
  await lookAt(page, '/print');
  for (const format of ['Letter', 'A4'] as const) {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false, landscape: true })).toString('latin1');
    expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)], format).toHaveLength(3);
  }
  await context.close();
});
