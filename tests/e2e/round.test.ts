import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { BuiltHouse, openBrowser, PHONE, type Visitor } from './house.js';
import { setUpNight } from './one-night.js';

/** Touch sizes, px: 20 x 18 mm for the main buttons, 15 mm for whatever else is touched, 2 mm between (board-and-reliability 3; 0.159 mm a px). */
const MAIN = { height: 126, width: 112 };
const LEAST = 94;
const GAP = 12;

let house: BuiltHouse;
let browser: Browser;
let manager: Visitor;

beforeAll(async () => {
  house = await BuiltHouse.open();
  browser = await openBrowser();
  ({ manager } = await setUpNight(house));
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

interface Box {
  readonly name: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
interface State {
  pits: { advice: object | null }[];
}

/** The round with this advice for its fire, on a phone. */
async function roundWith(advice: object): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'block', hasTouch: true });
  await context.addCookies(manager.cookies);
  await context.route('**/api/state', async (route) => {
    const answer = await route.fetch();
    const state = (await answer.json()) as State;
    await route.fulfill({ response: answer, json: { ...state, pits: state.pits.map((view) => ({ ...view, advice: { ...view.advice, ...advice } })) } });
  });
  const page = await context.newPage();
  await page.goto(`${house.url}/round`);
  await page.getByRole('radiogroup').first().waitFor();
  await page.waitForTimeout(400);
  return page;
}

/** Where everything that may be touched stands, on the page as it first opens. */
const boxes = (page: Page): Promise<Box[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('button, a, input, summary')].map((element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect();
      return { name: element.getAttribute('aria-label') ?? element.textContent ?? '', left, top, right, bottom };
    }),
  );
const meets = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const AIR = { set: { door: 'one-finger', damper: 'open', screen: false }, changes: ['door'], reason: 'air-cooler' };

describe.each([
  { rows: 3, advice: { action: 'two', air: null } },
  { rows: 4, advice: { action: 'one-thin', air: null } },
  { rows: 5, advice: { action: 'one-thin', air: AIR } },
])('the round with $rows questions', ({ rows, advice }) => {
  it('has nothing to touch under 15 mm, nothing over anything, and the button in the lower two thirds', async () => {
    const page = await roundWith(advice);
    const all = await boxes(page);
    const done = all.find(({ name }) => name === 'Done')!;
    const asked = all.filter(({ top }) => top < done.top);
    expect(await page.getByRole('radiogroup').evaluateAll((groups, bottom) => groups.filter((group) => group.getBoundingClientRect().top < bottom).length, done.top)).toBe(rows);
    expect(all.filter(({ left, right, top, bottom }) => Math.min(right - left, bottom - top) < LEAST - 0.5)).toEqual([]);
    for (const one of all) for (const other of all) if (one !== other) expect(meets(one, other), `${one.name} and ${other.name}`).toBe(false);
    const sorted = [...asked].sort((a, b) => a.top - b.top || a.left - b.left);
    sorted.forEach((one, nth) => {
      const next = sorted[nth + 1];
      if (next && next.top === one.top) expect(next.left - one.right).toBeGreaterThanOrEqual(GAP - 0.5);
    });
    expect(done.top).toBeGreaterThan(PHONE.height / 3);
    await page.context().close();
  });
});

it('with the three usual questions all stands on one screen, its buttons 20 mm high', async () => {
  const page = await roundWith({ action: 'two', air: null });
  const all = await boxes(page);
  const done = all.find(({ name }) => name === 'Done')!;
  expect(done.bottom).toBeLessThanOrEqual(PHONE.height);
  const main = all.filter(({ bottom }) => bottom <= done.bottom);
  expect(main).toHaveLength(10);
  expect(main.filter(({ left, right, top, bottom }) => right - left < MAIN.width || bottom - top < MAIN.height)).toEqual([]);
  await page.context().close();
});

it('two touches of the button within 0.4 s are one check', async () => {
  const page = await roundWith({ action: 'two', air: null });
  for (const name of ['fair', 'some', 'two']) await page.getByRole('radio', { name, exact: true }).tap();
  await page.getByRole('button', { name: /^Done/ }).first().dblclick({ delay: 20 });
  await page.getByText(/Recorded on this phone|Sent/).waitFor();
  const checks = async () => (await manager.get<{ pits: { checks: unknown[] }[] }>('/state')).pits[0]?.checks.length;
  await expect.poll(checks).toBeGreaterThan(0);
  await page.waitForTimeout(1500);
  expect(await checks()).toBe(1);
  await page.context().close();
});

it('for ten seconds one touch takes a check back, with signal too: what was touched stands there again, and only what is left alone is sent', async () => {
  const page = await roundWith({ action: 'two', air: null });
  const checks = async () => (await manager.get<{ pits: { checks: unknown[] }[] }>('/state')).pits[0]?.checks.length ?? 0;
  const before = await checks();
  for (const name of ['low', 'coals', 'two']) await page.getByRole('radio', { name, exact: true }).tap();
  await page.getByRole('button', { name: /^Done/ }).first().tap();
  await page.getByText('Recorded on this phone').waitFor();
  expect(await checks()).toBe(before);
  await page.getByRole('button', { name: 'Undo' }).first().tap();
  await page.getByText('kept on this phone').waitFor({ state: 'detached' });
  for (const name of ['low', 'coals', 'two']) expect(await page.getByRole('radio', { name, exact: true }).getAttribute('aria-checked')).toBe('true');
  await page.getByRole('radio', { name: 'fair', exact: true }).tap();
  await page.getByRole('button', { name: /^Done/ }).first().tap();
  await page.getByText(/^✓ Sent/).waitFor();
  const rows = (await manager.get<{ pits: { checks: { bed: string }[] }[] }>('/state')).pits[0]?.checks;
  expect(rows).toHaveLength(before + 1);
  expect(rows?.some(({ bed }) => bed === 'low')).toBe(false);
  await page.context().close();
});
