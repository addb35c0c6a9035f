import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Who works at a desk may sign in with a password in place of a PIN; it is kept where the PIN is. */
export class Passwords1790000850000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table crew_member add column by_password boolean not null default false');
  }

  /** A password is no PIN: who had one is given a PIN anew. */
  async down(runner: QueryRunner): Promise<void> {
    await runner.query('update crew_member set pin_hash = null where by_password');
    await runner.query('alter table crew_member drop column by_password');
  }
}
