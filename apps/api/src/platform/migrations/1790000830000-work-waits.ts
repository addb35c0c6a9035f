import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Work for which nobody waits, one row for each kind in a yard; platform/work-queue.ts says how it is taken. */
export class WorkWaits1790000830000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      create table work_waiting (
        yard_id uuid not null references yard on delete cascade,
        kind text not null,
        nth bigint not null,
        given bytea,
        wanted_at timestamptz not null,
        asked_by uuid not null,
        only_there boolean not null,
        taken_by uuid,
        lease_until timestamptz,
        tries integer not null,
        primary key (yard_id, kind)
      )`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table work_waiting');
  }
}
