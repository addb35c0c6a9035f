import { Controller, Inject, Module } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { Commands, recordAlone } from '../platform/index.js';
import { RecordChained1790000760000 } from '../platform/migrations/1790000760000-record-chained.js';
import { openTestHouse, type TestHouse } from '../platform/testing.js';
import type { Query } from './stored.js';
import { verifyRecords } from './verify.js';

@Controller()
class NoRoutes {
  constructor(@Inject(Commands) readonly commands: Commands) {}
}
@Module({ controllers: [NoRoutes] })
class Nothing {}

let house: TestHouse;
beforeEach(async () => void (house = await openTestHouse([Nothing])));
afterEach(() => house.close());

const act = (body: object, work: () => object = () => ({})) =>
  house.app.get(Commands).run(house.actor!, 'record-check', { key: randomUUID(), ...body }, async (deed) => {
    deed.tell({ kind: 'weather-recorded' });
    return work();
  });
/** As somebody would who has the database's password: the triggers are put aside, the yard's own row stays. */
const tamper = async (sql: string) => {
  await house.database.query('alter table audit_entry disable trigger user');
  await house.database.query(sql);
};
const verified = async (head?: { nth: number; link: string }) => {
  const runner = house.database.createQueryRunner();
  const query: Query = async (sql, values) => (await runner.query(sql, values)) as never;
  const [yard] = await verifyRecords(query, head).finally(() => runner.release());
  return yard!;
};
const breaks = async () => (await verified()).breaks.map(({ nth, what, entry }) => [nth, what, entry?.command]);

it('deeds done at once stand in one line, and the whole record verifies', async () => {
  await Promise.all(Array.from({ length: 30 }, (_, nth) => act({ nth, note: 'Wind, ñ €\u202e "quoted"', half: 0.1 + 0.2, tiny: 5e-324, huge: 1e300, empty: {} })));
  const { entries, breaks: found, head } = await verified();
  expect({ entries, found, nth: head.nth }).toEqual({ entries: 30, found: [], nth: 30 });
});

it('a deed that fails leaves no gap', async () => {
  await act({});
  await expect(act({}, () => { throw new Error('no'); })).rejects.toThrow('no');
  await act({});
  expect((await verified()).entries).toBe(2);
  expect(await breaks()).toEqual([]);
});

it.each([
  ['what was recorded', `update audit_entry set body = body || '{"bed": "full"}' where nth = 2`],
  ['who did it', 'update audit_entry set crew_member_id = null where nth = 2'],
  ['with which device', 'update audit_entry set device_id = null where nth = 2'],
  ['when, by a thousandth of a second', `update audit_entry set at = at + interval '1 millisecond' where nth = 2`],
  ['which command', `update audit_entry set command = 'record-food' where nth = 2`],
  ['the key', `update audit_entry set command_key = gen_random_uuid() where nth = 2`],
])('an entry in which somebody changed %s is named', async (_, sql) => {
  for (const bed of ['low', 'low', 'fair']) await act({ bed });
  await tamper(sql);
  const [one, ...more] = await breaks();
  expect([one?.slice(0, 2), more]).toEqual([[2, 'changed'], []]);
});

it('an entry whose digest was made to fit is named by its link', async () => {
  for (const bed of ['low', 'low', 'fair']) await act({ bed });
  await tamper(`update audit_entry set body = o.body, digest = o.digest, command_key = o.command_key from audit_entry o where audit_entry.nth = 2 and o.nth = 3`);
  expect(await breaks()).toContainEqual([2, 'out-of-line', 'record-check']);
});

it('an entry that was taken out, in the middle or at the end, and two that changed places, are named', async () => {
  for (const bed of ['low', 'fair', 'full', 'low']) await act({ bed });
  await tamper('delete from audit_entry where nth in (2, 4)');
  expect((await breaks()).filter(([, what]) => what === 'missing').map(([nth]) => nth)).toEqual([2, 4]);
  await tamper('update audit_entry set nth = case nth when 1 then 9 when 3 then 1 end; update audit_entry set nth = 3 where nth = 9');
  expect((await breaks()).map(([nth, what]) => `${String(nth)} ${String(what)}`)).toEqual(expect.arrayContaining(['1 out-of-line', '3 out-of-line']));
});

it('a record written anew from end to end is found by a link that was kept elsewhere', async () => {
  for (const bed of ['low', 'fair']) await act({ bed });
  const { head } = await verified();
  expect((await verified(head)).breaks).toEqual([]);
  await tamper('delete from audit_entry');
  await house.database.query(`update yard set record_nth = 0, record_link = decode(repeat('00', 32), 'hex')`);
  for (const bed of ['full', 'full']) await act({ bed });
  expect((await verified()).breaks).toEqual([]);
  expect((await verified(head)).breaks).toMatchObject([{ nth: 2, what: 'other-head' }]);
});

it('the database itself refuses to change an entry or to take it out, and people and devices that it names stay', async () => {
  await act({});
  const refuses = (sql: string) => expect(house.database.query(sql)).rejects.toThrow();
  await refuses(`update audit_entry set body = '{}'`);
  await refuses('delete from audit_entry');
  await refuses('truncate audit_entry');
  await refuses('delete from crew_member');
  await refuses('delete from device');
  await house.database.query('delete from yard'); // as a practice night goes
  expect(await house.database.query('select 1 from audit_entry')).toEqual([]);
});

it('what has no command stands in the same line', async () => {
  const entry = { at: '2027-01-15T23:00:00Z', personId: null, deviceId: null, command: 'sign-in' as const, key: randomUUID(), body: {} };
  await act({});
  await house.database.transaction((em) => recordAlone(em, house.yardId, entry));
  await act({});
  expect([(await verified()).entries, await breaks()]).toEqual([3, []]);
});

it('entries from before the chain are taken into it in the order in which they came', async () => {
  const runner = house.database.createQueryRunner();
  const migration = new RecordChained1790000760000();
  await migration.down(runner);
  const before = `insert into audit_entry (yard_id, at, command, command_key, body) select $1, now(), 'record-check', gen_random_uuid(), jsonb_build_object('nth', nth) from generate_series(1, 1200) nth`;
  await runner.query(before, [house.yardId]);
  await migration.up(runner);
  await runner.release();
  await act({});
  expect([(await verified()).entries, await breaks()]).toEqual([1201, []]);
  const [{ same }] = (await house.database.query(`select bool_and(nth = (body->>'nth')::int) as same from audit_entry where body ? 'nth'`)) as [{ same: boolean }];
  expect(same).toBe(true);
});
