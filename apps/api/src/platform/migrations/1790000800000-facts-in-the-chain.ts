import { randomUUID } from 'node:crypto';
import type { MigrationInterface, QueryRunner } from 'typeorm';
import { digestOf } from '../record.js';
import { FACT_TABLES, factDigest } from '../facts.js';

/**
 * Fire checks, lines of the food log and moves of wood are held by the chain too: the database digests each as it is written,
 * and the link of its deed's entries takes the digests in. Once linked it is never changed; it goes only with its yard.
 */
const UP = `
create table kept_fact (
  yard_id uuid not null references yard on delete cascade,
  kind text not null check (kind in (${FACT_TABLES.map((table) => `'${table}'`).join(', ')})),
  id uuid not null,
  digest bytea not null,
  written_in xid8 not null default pg_current_xact_id(),
  nth bigint,
  primary key (kind, id)
);
create index kept_fact_linked on kept_fact (yard_id, nth);
create index kept_fact_open on kept_fact (yard_id, written_in) where nth is null;
create function keep_fact() returns trigger language plpgsql set timezone = 'UTC' as $$
begin
  if tg_op = 'UPDATE' and exists (select from kept_fact where kind = tg_table_name and id = old.id and nth is not null) then
    raise exception 'A line of the record is never changed: add one that corrects it.';
  end if;
  insert into kept_fact (yard_id, kind, id, digest) values (new.yard_id, tg_table_name, new.id, ${factDigest('new')})
  on conflict (kind, id) do update set digest = excluded.digest;
  return null;
end $$;
create function refuse_loss_of_fact() returns trigger language plpgsql as $$
begin raise exception 'A line of the record is never taken out: add one that corrects it.'; end $$;
`;
const perTable = (table: string) => `
create trigger ${table}_kept after insert or update on ${table} for each row when (pg_trigger_depth() = 0) execute function keep_fact();
create trigger ${table}_goes_with_its_yard before delete on ${table} for each row when (pg_trigger_depth() = 0) execute function refuse_loss_of_fact();
`;
/** What was written before goes into the chain with one entry of the house. */
const OLD = (table: string) => `insert into kept_fact (yard_id, kind, id, digest) select yard_id, '${table}', f.id, ${factDigest('f')} from ${table} f where yard_id = $1`;

async function takeIn(runner: QueryRunner, yardId: string): Promise<void> {
  for (const table of FACT_TABLES) await runner.query(OLD(table), [yardId]);
  const [{ facts, at }] = (await runner.query(
    `select count(*)::int as facts, to_char(date_trunc('second', now()) at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as at from kept_fact where yard_id = $1`, [yardId],
  )) as [{ facts: number; at: string }];
  if (facts === 0) return;
  const entry = { at, personId: null, deviceId: null, command: 'take-facts-in' as const, key: randomUUID(), body: { facts } };
  await runner.query(
    `with yard_now as (
       update yard set record_nth = record_nth + 1, record_link = sha256(record_link || $2::bytea || (select string_agg(digest, '' order by kind collate "C", id) from kept_fact where yard_id = $1)) where id = $1 returning record_nth, record_link
     ), linked as (update kept_fact set nth = record_nth from yard_now where yard_id = $1)
     insert into audit_entry (yard_id, nth, at, command, command_key, body, digest, link) select $1, record_nth, $3, $4, $5, $6, $2, record_link from yard_now`,
    [yardId, digestOf(yardId, entry), entry.at, entry.command, entry.key, JSON.stringify(entry.body)],
  );
}

export class FactsInTheChain1790000800000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
    await runner.query(`set local timezone = 'UTC'`);
    for (const { id } of (await runner.query('select id from yard')) as { id: string }[]) await takeIn(runner, id);
    for (const table of FACT_TABLES) await runner.query(perTable(table));
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const table of FACT_TABLES) await runner.query(`drop trigger ${table}_kept on ${table}; drop trigger ${table}_goes_with_its_yard on ${table}`);
    await runner.query('drop function keep_fact; drop function refuse_loss_of_fact; drop table kept_fact');
  }
}
