import { later, type PitId, toIso } from '@stokehold/domain/quantity';
import { connectAsync, type IClientPublishOptions, type MqttClient } from 'mqtt';
import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { connect, createServer, type Server, type Socket } from 'node:net';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { Broker, GatewayMessages, GatewaysModule, signatureOf } from '../../apps/api/src/gateways/index.js';
import { openTestHouse, type TestHouse } from '../../apps/api/src/platform/testing.js';

/** These tests need an MQTT 5 broker: the one of MQTT_URL, or one that answers on 127.0.0.1:1883 (Debian: apt-get install mosquitto). */
const url = process.env['MQTT_URL'] ?? 'mqtt://127.0.0.1:1883';
const { hostname, port } = new URL(url);

const token = randomBytes(32).toString('base64url');
const tokenHash = createHash('sha256').update(token).digest();
const [pit, probe, deviceId] = [randomUUID() as PitId, randomUUID(), randomUUID()];
const clientId = `house-${randomUUID()}`;
let house: TestHouse;
let gateway: MqttClient;
let between: { readonly server: Server; readonly sockets: Set<Socket>; readonly url: string };

/** A line to the broker that can be cut. */
async function openLine(): Promise<typeof between> {
  const sockets = new Set<Socket>();
  const server = createServer((near) => {
    const far = connect(Number(port || 1883), hostname);
    for (const socket of [near, far]) sockets.add(socket);
    for (const [from, to] of [[near, far], [far, near]] as const) {
      from.pipe(to);
      from.on('error', () => to.destroy()).on('close', () => to.destroy());
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { server, sockets, url: `mqtt://127.0.0.1:${(server.address() as { port: number }).port}` };
}
const cut = () => between.sockets.forEach((socket) => socket.destroy());

const signed = (payload: string) => ({ qos: 1, properties: { userProperties: { signature: signatureOf(Buffer.from(payload), tokenHash) } } }) as const satisfies IClientPublishOptions;
const topic = (what: string) => `stokehold/${house.yardId}/${deviceId}/${what}`;
const reading = (agoS: number, tempC: number) => ({ probeId: probe, tempC, takenAt: toIso(later(house.now, -agoS)) });
async function send(readings: object[], payload = JSON.stringify({ readings })): Promise<void> {
  await gateway.publishAsync(topic('readings'), payload, signed(payload));
}
const kept = async () => ((await house.database.query('select temp_c from reading order by taken_at')) as { temp_c: number }[]).map(({ temp_c }) => temp_c);
const broker = () => house.app.get(Broker);

beforeAll(async () => {
  house = await openTestHouse([GatewaysModule]);
  await house.database.query(`insert into pit values ($1, $2, 'Bess', 3, 4, 'left', 90, 2.3, 0.76, 0.61, 0.61, 0.0095, 1.5, 0.15, 118, 124, false)`, [pit, house.yardId]);
  await house.database.query('insert into probe values ($1, $2, $3, $4, 0, false)', [probe, house.yardId, pit, 'F']);
  await house.database.query(`insert into device values ($1, $2, 'Gateway east', 'gateway', $3, now(), null, null)`, [deviceId, house.yardId, tokenHash]);
  between = await openLine();
  gateway = await connectAsync(url, { protocolVersion: 5, connectTimeout: 5000, reconnectPeriod: 0 }).catch(() => {
    throw new Error(`No MQTT broker answers at ${url}: start one (Debian: apt-get install mosquitto), or set MQTT_URL.`);
  });
  await broker().open({ url: between.url, clientId });
});
beforeEach(() => house.database.query('delete from reading'));
afterEach(() => house.database.query('delete from command_key'));
afterAll(async () => {
  await gateway?.endAsync();
  await house?.close();
  between?.server.close();
  // The broker forgets the house of this run.
  const gone = await connectAsync(url, { protocolVersion: 5, clientId, clean: true });
  await gone.endAsync();
});

it('signed readings are kept, once however often the broker brings them', async () => {
  const payload = JSON.stringify({ readings: [reading(20, 120), reading(10, 121)] });
  for (let nth = 0; nth < 3; nth++) await send([], payload);
  // Messages of one topic come in order: once this one is kept, so were all three before it.
  await send([reading(5, 122)]);
  await expect.poll(kept).toEqual([120, 121, 122]);
  expect(await house.database.query('select command from command_key')).toHaveLength(2);
});

it('what is unsigned, malformed, of another gateway or of another form is let go, and what comes after it is kept', async () => {
  const payload = JSON.stringify({ readings: [reading(30, 300)] });
  await gateway.publishAsync(topic('readings'), payload, { qos: 1 });
  await gateway.publishAsync(`stokehold/${house.yardId}/${randomUUID()}/readings`, payload, signed(payload));
  await send([], '{"readings": [');
  await send([], JSON.stringify({ readings: Array.from({ length: 1001 }, (_, nth) => reading(nth, 300)) }));
  await send([{ ...reading(30, 300), unit: 'F' }]);
  await send([reading(5, 122)]);
  await expect.poll(kept).toEqual([122]);
});

it('a line that is cut loses nothing: what was sent meanwhile comes when the house is back', async () => {
  await send([reading(50, 117)]);
  await expect.poll(kept).toEqual([117]);
  cut();
  for (let nth = 0; nth < 20; nth++) await send([reading(40 - nth, 118 + nth / 10)]);
  await expect.poll(async () => (await kept()).length).toBe(21);
});

it('a database that is away for a moment loses nothing', async () => {
  await house.database.query('alter table command_key rename to command_key_away');
  await send([reading(15, 119)]);
  await new Promise((resolve) => setTimeout(resolve, 500));
  await house.database.query('alter table command_key_away rename to command_key');
  await expect.poll(kept).toEqual([119]);
});

it('the last will of a gateway that falls says that it is silent, and its next word that it is back', async () => {
  const silent = () => house.app.get(GatewayMessages).silent(house.database.manager, house.yardId, house.now);
  const will = { topic: topic('status'), payload: Buffer.from('offline'), ...signed('offline'), retain: true };
  const falls = await connectAsync(url, { protocolVersion: 5, reconnectPeriod: 0, will });
  await falls.publishAsync(topic('status'), 'online', { ...signed('online'), retain: true });
  expect(await silent()).toEqual([]);
  falls.stream.destroy();
  await expect.poll(silent).toEqual([deviceId]);
  await gateway.publishAsync(topic('status'), 'online', { ...signed('online'), retain: true });
  await expect.poll(silent).toEqual([]);
  await gateway.publishAsync(topic('status'), '', { qos: 1, retain: true });
});
