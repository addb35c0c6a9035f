import { toIso } from '@stokehold/domain/quantity';
import { createHash, randomUUID } from 'node:crypto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { CookingModule, Watch } from '../cooking/index.js';
import { TestNight } from '../pits/testing.js';
import { FactsInTheChain1790000800000 } from '../platform/migrations/1790000800000-facts-in-the-chain.js';
import type { Query } from './stored.js';
import { verifyRecords } from './verify.js';

let night: TestNight;
const cookId = randomUUID();
beforeEach(async () => {
  night = await TestNight.open(1, { modules: [CookingModule] });
  await night.post('/cooks', { cook: { id: cookId, cut: 'Brisket', shape: 'slab', pieces: 6, weightKg: 37.8, serviceId: null, comesOffAt: null } });
  await night.check({ splits: 2, fireEndTempC: 121.1 }).expect(201);
  await night.post('/food-log', { entries: [{ kind: 'reading', cookId, at: toIso(night.house.now), stage: 'holding', tempC: 60.05 }] });
});
afterEach(() => night.close());

const verified = async () => {
  const runner = night.house.database.createQueryRunner();
  const query: Query = async (sql, values) => (await runner.query(sql, values)) as never;
  const [yard] = await verifyRecords(query).finally(() => runner.release());
  return yard!;
};
const ask = (sql: string, values: unknown[] = []) => night.house.database.query(sql, values);
/** As somebody would who has the database's password. */
const tamper = async (table: string, sql: string) => {
  await ask(`alter table ${table} disable trigger user`);
  await ask(sql);
};

it('a night as it was recorded verifies, every check, food line and move of wood in it', async () => {
  expect(await verified()).toMatchObject({ breaks: [], facts: [] });
  const [{ facts, open }] = (await ask('select count(*)::int as facts, (count(*) filter (where nth is null))::int as open from kept_fact')) as [{ facts: number; open: number }];
  expect([facts, open]).toEqual([5, 0]); // one check, one food line; bought, pulled, burned
});

// SHA-256 by node's own hand over what PostgreSQL shows of the row: FIPS 180-4 is the other side of the comparison.
it('the digest of a row is that of its text as jsonb', async () => {
  const [row] = (await ask(`select digest, jsonb_strip_nulls(to_jsonb(f))::text as text from food_entry f join kept_fact using (id)`)) as [{ digest: Buffer; text: string }];
  const inUtc = row.text.replaceAll(/([+-]\d\d:\d\d)"/g, '+00:00"');
  expect(createHash('sha256').update(inUtc).digest().equals(row.digest)).toBe(true);
});

it.each([
  ['fire_check', `update fire_check set bed = 'full'`, 'changed'],
  ['fire_check', `update fire_check set seen_at = seen_at - interval '1 second'`, 'changed'],
  ['food_entry', 'update food_entry set temp_c = 60.06', 'changed'],
  ['wood_move', `update wood_move set cart_pieces = -1 where kind = 'burned'`, 'changed'],
  ['food_entry', 'delete from food_entry', 'missing'],
] as const)('one row of %s after "%s" is named', async (table, sql, what) => {
  const [{ id }] = (await ask(`select id from ${table} order by ${table === 'wood_move' ? `kind = 'burned' desc` : '1'} limit 1`)) as [{ id: string }];
  await tamper(table, sql);
  expect((await verified()).facts).toMatchObject([{ table, id, what, nth: expect.any(Number) }]);
});

it('a row whose digest was made to fit is found by the link of its entry', async () => {
  await tamper('food_entry', 'update food_entry set temp_c = 63');
  await ask(`update kept_fact set digest = (select sha256(convert_to(jsonb_strip_nulls(to_jsonb(f))::text, 'UTF8')) from food_entry f) where kind = 'food_entry'`);
  expect((await verified()).breaks).toMatchObject([{ what: 'out-of-line', entry: { command: 'record-food' } }]);
});

it('a row that was written past the house is named', async () => {
  await ask(`insert into wood_move (id, yard_id, lot_id, kind, stack_pieces, cart_pieces, moved_at) select gen_random_uuid(), yard_id, lot_id, 'recounted', -5, 0, now() from wood_move limit 1`);
  expect((await verified()).facts).toMatchObject([{ table: 'wood_move', what: 'unlinked', nth: null }]);
});

it('the database itself refuses to change a line or to take it out; with its yard it goes', async () => {
  await expect(ask(`update fire_check set bed = 'full'`)).rejects.toThrow('never changed');
  await expect(ask('delete from food_entry')).rejects.toThrow('never taken out');
  await night.house.settle();
  await night.house.app.get(Watch).idle();
  await ask('delete from yard');
  expect(await ask('select 1 from kept_fact')).toEqual([]);
});

it('what was written before is taken into the chain with one entry', async () => {
  const runner = night.house.database.createQueryRunner();
  const migration = new FactsInTheChain1790000800000();
  await migration.down(runner);
  const [{ nth }] = (await ask('select record_nth::int as nth from yard')) as [{ nth: number }];
  await runner.startTransaction();
  await migration.up(runner);
  await runner.commitTransaction();
  await runner.release();
  expect(await ask('select command, body from audit_entry where nth = $1', [nth + 1])).toEqual([{ command: 'take-facts-in', body: { facts: 5 } }]);
  expect((await verified()).facts).toEqual([]);
  expect(await ask('select 1 from kept_fact where nth is distinct from $1', [nth + 1])).toEqual([]);
});
