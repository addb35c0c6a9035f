import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { BOARD, BuiltHouse, openBrowser } from './house.js';

// What becomes of a night from which somebody is taken away. How long each step takes is measured by the bench `away`; here stands
// what follows what, however slow the machine.

interface State {
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly shift: { readonly people: readonly { readonly personId: string; readonly name: string; readonly presence: string }[] };
  readonly plan: { readonly assignments: readonly { readonly work: { readonly kind: string; readonly pitId?: string }; readonly people: readonly string[] }[] };
}

const LONG = 90_000;
let house: BuiltHouse;
let browser: Browser;
let wall: Page;
let desk: Page;

/** What the window of the practice night says: the codes of both links, and with which name and PIN to sign in. */
const said = () => ({ codes: [...house.window.matchAll(/enrol#(\S+)/g)].map(([, code]) => code!), sign: / as (\S+), PIN (\d+)/.exec(house.window) });

async function enrolled(code: string, name: string): Promise<Page> {
  const page = await (await browser.newContext({ viewport: BOARD })).newPage();
  page.setDefaultTimeout(LONG);
  await page.goto(`${house.url}/enrol#${code}`);
  await page.getByLabel('Name of this device').fill(name);
  await page.getByRole('button', { name: 'Enrol' }).click();
  return page;
}

async function signIn(page: Page, name: string, pin: string): Promise<void> {
  await page.getByRole('button', { name }).click();
  for (const digit of pin) await page.getByRole('button', { name: digit, exact: true }).click();
  const send = page.getByRole('button', { name: 'Sign in' });
  if (await send.isVisible().catch(() => false)) await send.click();
  await page.waitForURL(/\/(round|night)$/);
}

const state = (): Promise<State> => desk.evaluate(async () => (await fetch('/api/state')).json() as Promise<State>);

/** Somebody who is there and has a next check of a fire, but not who sits at the desk. */
async function whoHasAFire(lead: string): Promise<string> {
  const { shift, plan } = await state();
  const here = shift.people.filter(({ presence, name }) => presence === 'here' && name !== lead);
  const next = plan.assignments.filter(({ work }, nth, all) => work.kind === 'check' && all.findIndex((one) => one.work.pitId === work.pitId) === nth);
  const one = here.find(({ personId }) => next.some(({ people }) => people.includes(personId)));
  if (!one) throw new Error(`nobody but ${lead} has a fire: ${JSON.stringify(next)}`);
  return one.name;
}

/** All that the panel of changes says, long lists opened. */
async function changesSaid(): Promise<string> {
  const panel = desk.locator('section', { has: desk.getByRole('heading', { name: 'What changed' }) });
  for (const more of await panel.getByRole('button', { name: 'More' }).all()) await more.click({ timeout: 2000 }).catch(() => undefined);
  return (await panel.allInnerTexts()).join('\n');
}

beforeAll(async () => {
  house = await BuiltHouse.open(['--practice', '--at', '01:00', '--seed', '7']);
  browser = await openBrowser();
}, 120_000);
afterAll(async () => {
  await browser?.close();
  await house?.close();
});

it('at 01:00 somebody is taken away: what changed is listed with its reasons and stays beside newer plans, and the wall gives their fires to others', async () => {
  await expect.poll(() => said().sign, { timeout: 600_000, interval: 500 }).not.toBeNull(); // the night up to 01:00 passes first
  const { codes: [wallCode, handCode], sign } = said();
  const [, lead, pin] = sign!;
  wall = await enrolled(wallCode!, 'Wall');
  await wall.locator('[data-row]').first().waitFor();
  desk = await enrolled(handCode!, 'Desk');
  await signIn(desk, lead!, pin!);
  await desk.goto(`${house.url}/night?show=crew`);
  const gone = await whoHasAFire(lead!);

  await desk.getByRole('button', { name: `${gone} is away` }).click();
  await desk.getByRole('textbox', { name: 'Back at' }).fill('');
  await desk.getByRole('button', { name: 'Report away' }).click();
  await desk.getByRole('link', { name: 'How it stands', exact: true }).click();
  await expect.poll(changesSaid, { timeout: LONG }).toContain(`because ${gone} is not there.`);

  // The wall: on no stripe any more; every fire has somebody else.
  await expect.poll(async () => (await wall.locator('[data-row]').allInnerTexts()).filter((text) => text.includes(gone)), { timeout: LONG }).toEqual([]);
  const { people, plan, shift } = await state();
  expect(shift.people.find(({ name }) => name === gone)?.presence).toBe('away');
  const id = people.find(({ name }) => name === gone)!.id;
  expect(plan.assignments.filter((one) => one.people.includes(id))).toEqual([]);
  expect(plan.assignments.filter(({ work }) => work.kind === 'check').length).toBeGreaterThan(0);

  // A fire makes the next plan: what was decided still stands, under its time.
  const decided = desk.getByRole('region', { name: /^Decided at/ });
  await decided.first().waitFor();
  await changesSaid();
  expect((await decided.allInnerTexts()).join('\n')).toContain(`because ${gone} is not there.`);
}, 1_200_000);
