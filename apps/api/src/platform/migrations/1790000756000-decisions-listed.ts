import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What people decided a while ago stays listed with the plans that come after it. */
export class DecisionsListed1790000756000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table plan add column decisions jsonb not null default '[]'`);
    await runner.query('alter table plan alter column decisions drop default');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table plan drop column decisions');
  }
}
