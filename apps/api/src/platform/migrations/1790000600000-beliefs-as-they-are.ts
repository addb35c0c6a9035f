import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The numbers of a belief do not get shorter by compressing them; it is tried no more. */
export class BeliefsAsTheyAre1790000600000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table pit_fire alter belief set storage external');
    await runner.query('alter table fire_look alter belief set storage external');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table pit_fire alter belief set storage extended');
    await runner.query('alter table fire_look alter belief set storage extended');
  }
}
