import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where on the earth a yard lies: by its sun the boards turn to day and night. Both or neither. */
export class WhereTheYardLies1790000740000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      alter table yard
        add latitude_deg double precision check (latitude_deg between -90 and 90),
        add longitude_deg double precision check (longitude_deg between -180 and 180),
        add constraint yard_lies_whole check ((latitude_deg is null) = (longitude_deg is null))`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table yard drop constraint yard_lies_whole, drop latitude_deg, drop longitude_deg');
  }
}
