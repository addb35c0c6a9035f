import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A chamber that comes back into its band by itself calls nobody. */
const UP = `
alter table alarm drop constraint alarm_suppressed_by_check;
alter table alarm add constraint alarm_suppressed_by_check check (suppressed_by in ('after-check', 'check-due', 'comes-back'));
`;

const DOWN = `
update alarm set suppressed_by = null where suppressed_by = 'comes-back';
alter table alarm drop constraint alarm_suppressed_by_check;
alter table alarm add constraint alarm_suppressed_by_check check (suppressed_by in ('after-check', 'check-due'));
`;

export class ComesBack1790000790000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
