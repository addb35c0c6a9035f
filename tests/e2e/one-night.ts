import { randomUUID } from 'node:crypto';
import type { Browser, Page } from 'playwright-core';
import { type BuiltHouse, Visitor } from './house.js';

export const PIN = '482913';
const at = (hours: number) => `${new Date(Date.now() + hours * 3_600_000).toISOString().slice(0, 19)}Z`;

/** A house with a yard, one pit that burns, wood on its cart and a cook on the pit; looked at by its manager. */
export interface OneNight {
  readonly manager: Visitor;
  readonly ids: { readonly person: string; readonly pit: string; readonly lot: string; readonly service: string; readonly cook: string };
}

/** What a manager sets up before the night: a yard, a pit that burns, wood on its cart, and a cook on the pit. */
export async function setUpNight(house: BuiltHouse): Promise<OneNight> {
  const manager = new Visitor(house);
  const ids = { pit: randomUUID(), lot: randomUUID(), service: randomUUID(), cook: randomUUID() };
  const yard = {
    name: 'Saltmarsh Yard', timeZone: 'America/Chicago', units: 'us', language: 'en', planWidthM: 30, planHeightM: 20, planTopDeg: 0,
    woodPlace: { xM: 15, yM: 18 }, walkSpeedMPerS: 1.2, screenDiagonalM: 1.4, viewDistanceM: 5,
  };
  const me = await manager.post<{ person: { id: string } }>('/first-run', {
    token: house.firstRunToken, yard, manager: { name: 'Renske', pin: PIN, language: 'en' }, deviceName: 'Desk',
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
  return { manager, ids: { ...ids, person: me.person.id } };
}

interface Enrolling {
  readonly house: BuiltHouse;
  readonly browser: Browser;
  readonly manager: Visitor;
  readonly kind: 'wall' | 'hand';
  readonly viewport: { readonly width: number; readonly height: number };
}

/** Opens a page on a device of this kind, enrolled by its one-time code as a person would. */
export async function enrolledPage({ house, browser, manager, kind, viewport }: Enrolling): Promise<Page> {
  const { code } = await manager.command<{ code: string }>('/devices/codes', { kind });
  const page = await (await browser.newContext({ viewport })).newPage();
  await page.goto(`${house.url}/enrol#${code}`);
  await page.getByLabel('Name of this device').fill(kind === 'wall' ? 'Wall' : 'Phone');
  await page.getByRole('button', { name: 'Enrol' }).click();
  return page;
}

/** Signs the manager in on a page that asks who is here, and goes to the round. */
export async function signInToRound(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Renske' }).click();
  for (const digit of PIN) await page.getByRole('button', { name: digit, exact: true }).click();
  const signIn = page.getByRole('button', { name: 'Sign in' });
  if (await signIn.isVisible().catch(() => false)) await signIn.click();
  await page.waitForURL(/\/(round|night)$/);
  await page.goto(new URL('/round', page.url()).href);
  await page.getByRole('heading', { name: /Bess/ }).waitFor();
}
