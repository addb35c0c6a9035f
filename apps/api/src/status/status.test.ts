import { FINDINGS, type Finding, HOUSE_PARTS, houseStatus, type PartView, problem, type Role } from '@stokehold/domain/contract';
import { later, toIso } from '@stokehold/domain/quantity';
import { randomUUID } from 'node:crypto';
import request from 'supertest';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { noteTaken } from '../backup/backup.js';
import { TestNight } from '../pits/testing.js';
import { WantOfRoom } from '../platform/index.js';
import { HouseWatch } from './house-watch.js';
import { StatusModule } from './index.js';

let night: TestNight;
const sql = (text: string, values: unknown[] = []) => night.house.database.query(text, values);
beforeAll(async () => {
  night = await TestNight.open(1, { modules: [StatusModule] });
});
afterAll(() => night.close());
beforeEach(() => sql('delete from house_process where id <> (select id from house_process order by seen_at desc limit 1)'));

const ask = () => request(night.house.app.getHttpServer()).get('/api/status');
const parts = async (): Promise<PartView[]> => houseStatus.parse((await ask().expect(200)).body).parts;
const find = async (finding: Finding) => (await parts()).find((one) => one.finding === finding);

it('every part stands on the page once, in the state that its finding has', async () => {
  const all = await parts();
  expect(all.map(({ part }) => part)).toEqual(HOUSE_PARTS);
  for (const { part, state, finding } of all) expect({ part, state }).toEqual(FINDINGS[finding]);
});

it.each(['crew', 'lead'] as const)('a person who is %s does not see it: the manager does', async (role: Role) => {
  const { actor } = night.house;
  night.house.actor = { ...actor!, person: { ...actor!.person!, role } };
  const answer = await ask();
  night.house.actor = actor;
  expect([answer.status, problem.parse(answer.body).code]).toEqual([403, 'not-allowed']);
});

it('a database that answers says how quickly, and how large it is; the disk how much is left', async () => {
  expect((await find('database-answers'))?.figures).toMatchObject({ answerS: expect.any(Number), sizeBytes: expect.any(Number) });
  const [disk] = (await parts()).filter(({ part }) => part === 'disk');
  expect(disk!.figures.usedFrac).toBeGreaterThan(0);
  expect(disk!.figures.leftBytes).toBeGreaterThan(0);
});

it('a refusal for want of room is said for a minute', async () => {
  night.house.app.get(WantOfRoom).note();
  expect(await find('database-full')).toMatchObject({ state: 'down', figures: { lastAt: toIso(night.house.now) } });
});

it('facts that nobody carries are said with the age of the oldest', async () => {
  const since = toIso(later(night.house.now, -300));
  await sql(`insert into outbox (yard_id, seq, event, at) values ($1, 1000000, '{"kind":"minute-passed"}', $2)`, [night.house.yardId, since]);
  expect(await find('outbox-stuck')).toMatchObject({ state: 'down', since, figures: { count: 1 } });
  await sql('delete from outbox where seq = 1000000');
  expect(await find('outbox-empty')).toMatchObject({ state: 'works' });
});

it('the minute of a shift that runs is late when nobody told one, and told when somebody did', async () => {
  await sql('delete from minute_told');
  expect(await find('tick-late')).toMatchObject({ state: 'down', since: toIso(later(night.house.now, -3600)) });
  await sql('insert into minute_told values ($1, $2, true)', [night.house.yardId, Math.floor(night.house.now / 60)]);
  expect((await find('tick-told'))?.figures.lastAt).toBe(toIso((Math.floor(night.house.now / 60) * 60) as typeof night.house.now));
});

it('a probe that fell silent is named with since when, one that is read is not', async () => {
  expect((await parts()).find(({ part }) => part === 'probes')?.finding).toBe('probes-none');
  const read = (nth: number, minutesAgo: number) => ({ probeId: night.probes[nth], takenAt: night.ago(minutesAgo), tempC: 120 });
  await night.post('/readings', { readings: [read(0, 20), read(1, 20)] });
  await night.post('/readings', { readings: [read(1, 0)] });
  expect(await find('probes-some-silent')).toMatchObject({ state: 'limps', since: night.ago(20), figures: { count: 1, of: 2, lastAt: night.ago(0) } });
});

it('a webhook that takes nothing is said with what waits, and since when', async () => {
  expect((await find('webhook-none'))?.state).toBe('unused');
  await sql(`insert into webhook values ($1, 'http://127.0.0.1:9/', 'x')`, [night.house.yardId]);
  await sql(`insert into link_message (yard_id, ref, kind, at, body) values ($1, 'one', 'alarm', $2, '{}')`, [night.house.yardId, night.ago(16)]);
  expect(await find('webhook-silent')).toMatchObject({ state: 'down', since: night.ago(16), figures: { count: 1 } });
  await sql(`update link_message set webhook_at = $1`, [night.ago(1)]);
  expect((await find('webhook-takes'))?.figures.lastAt).toBe(night.ago(1));
});

it('a backup that was taken is said with its time; none is said too', async () => {
  expect((await find('backup-never'))?.state).toBe('limps');
  await noteTaken((text, values) => sql(text, values ?? []) as never, new Date(Date.now() - 600_000).toISOString(), { sums: { lot: { rows: 3, sum: '' } } });
  const taken = await find('backup-taken');
  expect(Math.abs(Date.parse(taken!.figures.lastAt!) - Date.parse(night.ago(10)))).toBeLessThanOrEqual(2000);
});

it('another process that writes down how it stands is counted, and missed when it falls silent', async () => {
  expect((await find('one-process'))?.figures.count).toBe(1);
  const standing = { version: '0.0.9', host: 'elsewhere', runsForS: 900, leads: true, clock: { aheadS: 0, forS: 900 }, open: [{ yardId: night.house.yardId, boards: 4, beatAgoS: 1 }], broker: null, redis: null, disk: null, ended: [{ name: 'planNight', agoS: 30 }] };
  await sql('insert into house_process values ($1, clock_timestamp(), $2)', [randomUUID(), JSON.stringify(standing)]);
  expect((await find('versions-differ'))?.figures).toMatchObject({ count: 2, names: expect.arrayContaining(['0.0.9']) });
  expect((await find('push-beats'))?.figures.count).toBe(4);
  expect((await find('computations-ended'))?.figures).toMatchObject({ count: 1, names: ['planNight'] });
  // Of two that fell silent at most one was replaced by this one, which may have been started since.
  await sql('insert into house_process values ($1, clock_timestamp(), $2)', [randomUUID(), JSON.stringify(standing)]);
  await sql(`update house_process set seen_at = clock_timestamp() - interval '40 s' where standing->>'version' = '0.0.9'`);
  const { count, of } = (await find('process-fell-silent'))!.figures;
  expect([of! - count!, count]).toEqual([1, expect.toSatisfy((missed: number) => missed === 1 || missed === 2)]);
});

it('a process that looks at itself writes it down, and is gone from there when it ends in order', async () => {
  const watch = night.house.app.get(HouseWatch);
  await watch.look();
  expect(await sql(`select standing->>'version' as version from house_process where seen_at > clock_timestamp() - interval '3 s'`)).toHaveLength(1);
  await watch.beforeApplicationShutdown();
  expect(await sql(`select from house_process where seen_at > clock_timestamp() - interval '3 s'`)).toHaveLength(0);
});
