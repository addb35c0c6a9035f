import type { MigrationInterface, QueryRunner } from 'typeorm';

const UP = `
alter table cook add column mix jsonb not null default '[]';
alter table wood_pull add column mix jsonb not null default '{}';
alter table wood_pull alter column mix drop default, drop constraint wood_pull_because_check;
alter table wood_pull add constraint wood_pull_because_check check (because in ('asked', 'runs-short', 'stock-gone', 'mix-asked'));
`;

const DOWN = `
alter table wood_pull drop constraint wood_pull_because_check;
update wood_pull set because = 'asked' where because = 'mix-asked';
alter table wood_pull add constraint wood_pull_because_check check (because in ('asked', 'runs-short', 'stock-gone'));
alter table wood_pull drop column mix;
alter table cook drop column mix;
`;

/** Which wood the kitchen wants on the fire of a cook, and what a pull was told of it. */
export class TheKitchensWood1790000780000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
