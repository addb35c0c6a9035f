import { later, toIso } from '@stokehold/domain/quantity';
import { createHmac, randomUUID } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestNight } from '../pits/testing.js';
import { LinksModule } from './index.js';
import { ToldOutside } from './told-outside.js';

let night: TestNight;
let server: Server;
let address = '';
let status = 204;
const got: { body: Record<string, unknown>; text: string; signature: string }[] = [];
beforeAll(async () => {
  night = await TestNight.open(1, { modules: [LinksModule] });
  server = createServer((asked, response) => {
    let text = '';
    asked.on('data', (part: Buffer) => (text += part.toString()));
    asked.on('end', () => {
      got.push({ text, body: JSON.parse(text) as Record<string, unknown>, signature: String(asked.headers['x-stokehold-signature']) });
      response.writeHead(status).end();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  address = `http://127.0.0.1:${(server.address() as { port: number }).port}/alarms`;
});
afterAll(async () => {
  await night.close();
  server.closeAllConnections();
  server.close();
});

const outside = () => night.house.app.get(ToldOutside);
const get = (path: string) => request(night.house.app.getHttpServer()).get(path);
/** An alarm that was called to the one person of the night. */
async function called(kind: string): Promise<string> {
  const [alarm, call] = [randomUUID(), randomUUID()];
  await night.house.database.query(`insert into alarm (id, yard_id, kind, pit_id, state, raised_at) values ($1, $2, $3, $4, 'unacknowledged', $5)`, [alarm, night.house.yardId, kind, night.pits[0], toIso(night.house.now)]);
  await night.house.database.query('insert into alarm_call values ($1, $2, $3, $4, $5)', [call, night.house.yardId, alarm, toIso(night.house.now), [night.person]]);
  return call;
}

describe('a webhook', () => {
  let secret = '';
  it('is set by the manager and gets a secret; what is no address is refused', async () => {
    await night.send('/webhook', { url: 'javascript:alert(1)' }).expect(400);
    secret = (await night.send('/webhook', { url: address }).expect(201)).body.secret as string;
    expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
    expect((await get('/api/webhook').expect(200)).body).toEqual({ url: address });
  });
  it('is told an alarm once, with whom it called, signed', async () => {
    const call = await called('past-latest-safe');
    for (let i = 0; i < 3; i++) await outside().noteAlarms(night.house.yardId);
    for (let i = 0; i < 3; i++) await outside().send();
    const mine = got.filter(({ body }) => body['id'] === call);
    expect(mine).toHaveLength(1);
    expect(mine[0]!.body).toMatchObject({ kind: 'alarm', alarm: 'past-latest-safe', pit: 'Bess 1', people: ['Renske'] });
    expect(mine[0]!.signature).toBe(createHmac('sha256', secret).update(mine[0]!.text).digest('hex'));
  });
  it('that fails is told again until it takes the message', async () => {
    status = 500;
    const call = await called('wood-short');
    await outside().noteAlarms(night.house.yardId);
    await outside().send();
    status = 204;
    await outside().send();
    await outside().send();
    expect(got.filter(({ body }) => body['id'] === call)).toHaveLength(2);
  });
  it('is told a due check once, however often its time moves', async () => {
    await night.check().expect(201);
    await night.house.settle();
    night.house.now = later(night.house.now, 4 * 3600);
    for (let i = 0; i < 2; i++) await outside().noteDueChecks(night.house.yardId);
    const rows = await night.rows<{ kind: string; body: { pit: string } }>('link_message');
    expect(rows.filter(({ kind }) => kind === 'due-check')).toMatchObject([{ body: { pit: 'Bess 1' } }]);
  });
});

describe("a person's calendar", () => {
  it('is iCalendar by RFC 5545 under a secret address, and no other address has it', async () => {
    const { path } = (await night.send('/calendars', {}).expect(201)).body as { path: string };
    await night.house.database.query(`update shift_person set starts_at = now() + interval '1 day', ends_at = now() + interval '1 day 12 hours'`);
    const { text } = await get(path).expect(200).expect('content-type', /^text\/calendar/);
    // RFC 5545: 3.1 lines end in CRLF and have 75 octets at most; 3.6 and 3.6.1 name what must be there.
    expect(text.split('\r\n').every((line) => Buffer.byteLength(line) <= 75 && !line.includes('\n'))).toBe(true);
    for (const must of [/^BEGIN:VCALENDAR\r\n/, /\r\nVERSION:2\.0\r\n/, /\r\nPRODID:/, /\r\nBEGIN:VEVENT\r\n/, /\r\nUID:/, /\r\nDTSTAMP:\d{8}T\d{6}Z\r\n/, /\r\nDTSTART:\d{8}T\d{6}Z\r\n/, /\r\nDTEND:\d{8}T\d{6}Z\r\n/, /\r\nEND:VCALENDAR\s*$/]) expect(text).toMatch(must);
    await get('/api/calendars/none.ics').expect(404);
    await night.send('/calendars', {}).expect(201);
    await get(path).expect(404);
  });
});

it('Prometheus reads the house in its text form', async () => {
  const { text } = await get('/api/metrics').expect(200).expect('content-type', /^text\/plain/);
  // Text format 0.0.4: each metric has HELP and TYPE, then its samples.
  for (const name of ['stokehold_alarms', 'stokehold_probes', 'stokehold_outbox_waiting', 'nodejs_eventloop_lag_seconds']) expect(text).toMatch(new RegExp(`# HELP ${name} .+\n# TYPE ${name} gauge\n`));
  expect(text).toMatch(/stokehold_alarms\{kind="wood-short",state="unacknowledged"\} 1\n/);
});
