import type { MigrationInterface, QueryRunner } from 'typeorm';
import { BEGINNING, digestOf, type Entry, linkOf } from '../record.js';

/**
 * What was done becomes a chain: each entry has its number in the yard, its digest and its link. An entry is never changed,
 * and goes only with its yard. People and devices that an entry names stay as long as it does.
 */
const UP = `
alter table yard add column record_nth bigint not null default 0;
alter table yard add column record_link bytea not null default '\\x${BEGINNING.toString('hex')}';
alter table audit_entry add column nth bigint, add column digest bytea, add column link bytea;
alter table audit_entry drop constraint audit_entry_crew_member_id_fkey, drop constraint audit_entry_device_id_fkey;
alter table audit_entry add foreign key (crew_member_id) references crew_member, add foreign key (device_id) references device;
`;
const CLOSE = `
alter table audit_entry alter column nth set not null, alter column digest set not null, alter column link set not null;
create unique index audit_entry_nth on audit_entry (yard_id, nth);
create function refuse_change_of_record() returns trigger language plpgsql as $$
begin raise exception 'An entry of the record is never changed: add one that corrects it.'; end $$;
create trigger audit_entry_stays before update on audit_entry for each row execute function refuse_change_of_record();
create trigger audit_entry_goes_with_its_yard before delete on audit_entry for each row when (pg_trigger_depth() = 0) execute function refuse_change_of_record();
create trigger audit_entry_is_not_emptied before truncate on audit_entry execute function refuse_change_of_record();
`;
const DOWN = `
drop trigger audit_entry_stays on audit_entry;
drop trigger audit_entry_goes_with_its_yard on audit_entry;
drop trigger audit_entry_is_not_emptied on audit_entry;
drop function refuse_change_of_record;
alter table audit_entry drop constraint audit_entry_crew_member_id_fkey, drop constraint audit_entry_device_id_fkey;
alter table audit_entry add foreign key (crew_member_id) references crew_member on delete set null, add foreign key (device_id) references device on delete set null;
drop index audit_entry_nth;
alter table audit_entry drop column nth, drop column digest, drop column link;
alter table yard drop column record_nth, drop column record_link;
`;

type Old = Entry & { readonly id: string };
const AT_ONCE = 1000;

/** Entries of a yard from before the chain, in the order in which they came. */
const oldEntries = (runner: QueryRunner, yardId: string, after: string): Promise<Old[]> =>
  runner.query(
    `select id, to_char(at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as at, crew_member_id as "personId", device_id as "deviceId", command, command_key as key, body
     from audit_entry where yard_id = $1 and id > $2 order by id limit ${AT_ONCE}`,
    [yardId, after],
  );

async function chainYard(runner: QueryRunner, yardId: string): Promise<void> {
  let [nth, link, after]: [number, Buffer, string] = [0, BEGINNING, '0'];
  for (;;) {
    const entries = await oldEntries(runner, yardId, after);
    if (entries.length === 0) break;
    for (const { id, ...entry } of entries) {
      const digest = digestOf(yardId, entry);
      nth += 1;
      link = linkOf(link, [digest]);
      after = id;
      await runner.query('update audit_entry set nth = $2, digest = $3, link = $4, at = $5 where id = $1', [id, nth, digest, link, entry.at]);
    }
  }
  await runner.query('update yard set record_nth = $2, record_link = $3 where id = $1', [yardId, nth, link]);
}

export class RecordChained1790000760000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
    for (const { id } of (await runner.query('select id from yard')) as { id: string }[]) await chainYard(runner, id);
    await runner.query(CLOSE);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
