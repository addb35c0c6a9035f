import { randomUUID } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, it } from 'vitest';
import { AppModule } from '../../apps/api/src/app.module.js';
import { Broker } from '../../apps/api/src/gateways/index.js';
import { openTestHouseOf, type OpenedHouse } from '../../apps/api/src/platform/testing.js';
import { type NightReport, PracticeNights, readSample, type SampleNight } from '../../apps/api/src/practice/index.js';

/** Needs an MQTT 5 broker: the one of MQTT_URL, or one that answers on 127.0.0.1:1883 (Debian: apt-get install mosquitto). */
const url = process.env['MQTT_URL'] ?? 'mqtt://127.0.0.1:1883';
const file = fileURLToPath(new URL('../../infra/sample/brackwater.json', import.meta.url));
const opened: OpenedHouse[] = [];
afterEach(async () => {
  for (const house of opened.splice(0)) await house.close();
});

/** Two pits of the sample and five hours and a half: probes fail in the last two and a half of them. */
function shortNight(): SampleNight {
  const sample = readSample(file);
  const pits = sample.pits.slice(0, 2);
  const stands = ({ pit }: { pit: string }) => pits.some(({ name }) => name === pit);
  return {
    ...sample, pits,
    people: sample.people.slice(0, 3).map((person) => ({ ...person, to: '22:30', breaks: [] })),
    carts: sample.carts.filter(stands),
    cooks: [], services: [],
    shift: { ...sample.shift, to: '22:30' },
  };
}

async function run(broker?: string): Promise<{ readonly report: NightReport; readonly readings: unknown }> {
  const house = await openTestHouseOf((databaseUrl, dataFolder) => AppModule.on({ databaseUrl, workers: 0, connections: 4, dataFolder }));
  opened.push(house);
  if (broker) await house.app.get(Broker).open({ url: broker, clientId: `house-${randomUUID()}`, keepsForS: 0 });
  const night = await house.app.get(PracticeNights).openStill(shortNight(), 7, { faultyProbes: true, broker });
  while (!night.isOver) await night.minute();
  return { report: await night.report(), readings: await house.database.query('select probe_id, taken_at, temp_c, quality, reason from reading order by probe_id, taken_at') };
}

it('a night whose readings come over a broker is the night without one, reading by reading and call by call', async () => {
  const [without, over] = [await run(), await run(url)];
  expect(over.readings).toEqual(without.readings);
  expect(over.report).toEqual(without.report);
  expect(over.report.faults.map(({ kind, inTime }) => [kind, inTime])).toEqual([['stuck', true], ['open', true]]);
  expect(over.report.alarms.falseBand).toEqual([]);
}, 300_000);
