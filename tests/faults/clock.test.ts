import type { HouseStatus } from '@stokehold/domain/contract';
import { randomUUID } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { Client } from 'pg';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { measured } from './measured.js';
import { Folder, House } from './one-house.js';
import { OwnServer } from './own-server.js';

const PITS = 4;
const HOUR_S = 3600;

let server: OwnServer;
let folder: Folder;
let house: House;
let aheadS = 0;
beforeEach(async () => {
  [server, folder, aheadS] = [await OwnServer.start(), new Folder(), 0];
  house = await House.start(folder, { DATABASE_URL: server.url, STOKEHOLD_ITERATIONS: '0', FAULTS_CLOCK: clockFile(), NODE_OPTIONS: `--import=${new URL('./set-clock.mjs', import.meta.url).href}` });
  await house.ready();
  await house.firstRun();
});
afterEach(async () => {
  await house.end('SIGKILL');
  server.remove();
  await folder.remove();
});

const clockFile = () => join(folder.path, 'clock');
/** Sets the clock of the house's machine by so much. */
function setClock(byS: number): void {
  aheadS += byS;
  writeFileSync(clockFile(), String(aheadS * 1000));
  process.kill(house.pid, 'SIGUSR2');
}
const iso = (ms: number) => `${new Date(ms).toISOString().slice(0, 19)}Z`;
const at = (hours: number) => iso(Date.now() + hours * HOUR_S * 1000);
const command = async (path: string, body: object) => {
  const answer = await house.post(path, { key: randomUUID(), ...body });
  if (!answer.ok) throw new Error(`${path}: ${await answer.text()}`);
};
async function ask<T>(sql: string): Promise<T[]> {
  const client = new Client({ connectionString: server.url });
  await client.connect();
  return (await client.query(sql).finally(() => client.end())).rows as T[];
}
interface State {
  readonly clock: { readonly now: string; readonly aheadS?: number };
  readonly pits: readonly { readonly pit: { readonly id: string }; readonly due: { readonly dueAt: string; readonly latestSafeAt: string } | null; readonly checks: readonly { readonly marks: readonly string[] }[] }[];
}
const state = () => house.get<State>('/state');
/** How long until each check is due, s; by the house's own clock. */
const untilDue = ({ clock, pits }: State) => pits.map(({ due }) => (due ? (Date.parse(due.dueAt) - Date.parse(clock.now)) / 1000 : NaN));
const minutesTold = async () => Number((await ask<{ n: string }>(`select count(*) as n from outbox where event->>'kind' = 'minute-passed'`))[0]!.n);

/** Fires that were lit an hour ago, with a probe each, and were looked at just now. */
async function night(): Promise<{ pitId: string; probeId: string }[]> {
  const band = { lowC: 121, highC: 127 };
  const people = (await house.get<{ person: { id: string } }>('/me')).person;
  const pits = Array.from({ length: PITS }, (_, nth) => ({ pitId: randomUUID(), probeId: randomUUID(), nth }));
  for (const { pitId, probeId, nth } of pits) {
    await command('/pits', {
      pit: {
        id: pitId, name: `Pit ${nth + 1}`, xM: 4 * nth + 2, yM: 5, fireEnd: 'left', fireEndHeadingDeg: 270, chamberLengthM: 2.3, chamberDiameterM: 0.76, fireboxLengthM: 0.61, fireboxDiameterM: 0.61,
        steelThicknessM: 0.0095, stackHeightM: 1.5, stackDiameterM: 0.15, zones: [{ lengthM: 0.76 }, { lengthM: 0.76 }], probes: [{ id: probeId, name: 'fire end', zone: 0 }], band, retired: false,
      },
    });
  }
  await command('/shifts', { id: randomUUID(), startsAt: at(-2), endsAt: at(9), people: [{ personId: people.id, startsAt: at(-2), endsAt: at(9), breaks: [] }], pits: pits.map(({ pitId }) => ({ pitId, band, lightAt: at(-1) })) });
  const lotId = randomUUID();
  await command('/lots', { pieces: 2000, lot: { id: lotId, name: 'Oak', species: 'white-oak', lengthM: 0.36, thicknessM: 0.09, moisture: 0.14, boughtAt: at(-48), priceCents: 90_000 } });
  for (const { pitId } of pits) await command('/wood-moves', { lotId, pitId, pieces: 60, way: 'pull' });
  for (const { pitId } of pits) await command('/checks', { pitId, seenAt: at(0), sentAt: at(0), bed: 'full', left: 'most', raked: true, splits: 1 });
  return pits;
}

it('R8: the clock of the machine is set by minutes and by hours: no alarm calls for it, no check is late through it, minutes go on', async () => {
  const pits = await night();
  let going = true;
  // A gateway and a phone that go by the right time throughout, and do not know what the machine does.
  const gateway = async () => {
    for (; going; await pause(2000)) await command('/readings', { readings: pits.map(({ probeId }) => ({ probeId, takenAt: at(0), tempC: 124 })) });
  };
  const readings = gateway();
  await expect.poll(minutesTold, { timeout: 90_000, interval: 500 }).toBeGreaterThanOrEqual(1);
  // What called before its fire was looked at calls no more.
  const alarms = () => ask('select kind, pit_id, raised_at, state from alarm order by id');
  await expect.poll(async () => ((await alarms()) as { kind: string; state: string }[]).filter((one) => one.state !== 'returned-unacknowledged' && one.state !== 'normal')).toEqual([]);
  const called = await alarms();
  const apart: number[] = [];
  const steps = [600, -2 * HOUR_S];
  for (const byS of steps) {
    const [before, beganMs, told] = [await state(), performance.now(), await minutesTold()];
    setClock(byS);
    // One minute is told within a minute, and the next one too.
    await expect.poll(minutesTold, { timeout: 150_000, interval: 500 }).toBeGreaterThanOrEqual(told + 2);
    const after = await state();
    const passedS = (performance.now() - beganMs) / 1000;
    apart.push(Math.abs((Date.parse(after.clock.now) - Date.parse(before.clock.now)) / 1000 - passedS));
    expect(after.clock.aheadS).toBeCloseTo(aheadS, -0.5);
    // What forecasts move within two minutes is seconds; the clock was set by hundreds of them.
    untilDue(after).forEach((seconds, nth) => expect(Math.abs(untilDue(before)[nth]! - passedS - seconds)).toBeLessThan(120));
    expect(untilDue(after).every((seconds) => seconds > 0)).toBe(true);
    await command('/checks', { pitId: pits[0]!.pitId, seenAt: at(0), sentAt: at(0), bed: 'full', left: 'most', raked: false, splits: 0 });
    const [checked] = (await state()).pits.filter(({ pit }) => pit.id === pits[0]!.pitId);
    expect(checked!.checks.at(-1)!.marks).toEqual([]);
  }
  going = false;
  await readings;
  expect(await alarms()).toEqual(called);
  expect((await ask<{ byS: number }>(`select (event->>'byS')::int as "byS" from outbox where event->>'kind' = 'clock-stepped' order by seq`)).map(({ byS }) => Math.round(byS / 10) * 10)).toEqual(steps);
  // In the order in which they were told, no fact is older than the one before.
  expect(await ask(`select 1 from (select at, lag(at) over (order by seq) as before from outbox) as each where at < before`)).toEqual([]);
  expect(await ask(`select 1 from reading where abs(extract(epoch from taken_at - arrived_at)) > 3`)).toEqual([]);
  const found = (await house.get<HouseStatus>('/status')).parts.find(({ part }) => part === 'clock');
  expect(found).toMatchObject({ finding: 'clock-held', state: 'limps' });
  measured('R8', `set ahead by 10 min, then back by 2 h, ${PITS} fires with probes: 0 alarms, 0 checks late, each told once, minutes told on; the house's clock off by at most ${Math.max(...apart).toFixed(1)} s`);
}, 400_000);
