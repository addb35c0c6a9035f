import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How much hotter or cooler each zone was than its chamber: the past air of what lies there. */
export class ZonesAsTheyWere1790000720000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table fire_estimate add column zone_shift_k double precision[]');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table fire_estimate drop column zone_shift_k');
  }
}
