import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The device of each check and each move of wood, when a move came in, and what is written beside a line that was wrong. */
export class RecordsKept1790000770000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      alter table fire_check add column device_id uuid references device;
      alter table wood_move add column device_id uuid references device, add column recorded_at timestamptz;
      create table record_correction (
        id uuid primary key,
        yard_id uuid not null references yard on delete cascade,
        log text not null,
        line text not null,
        is_right text not null,
        because text not null,
        at timestamptz not null,
        crew_member_id uuid references crew_member,
        device_id uuid not null references device
      );
      create index record_correction_of_yard on record_correction (yard_id, log, line);
      create index wood_move_of_yard on wood_move (yard_id, moved_at);
      create index fire_check_of_yard on fire_check (yard_id, seen_at);
    `);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`
      drop table record_correction;
      drop index wood_move_of_yard;
      drop index fire_check_of_yard;
      alter table wood_move drop column device_id, drop column recorded_at;
      alter table fire_check drop column device_id;
    `);
  }
}
