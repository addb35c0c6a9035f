import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What the status page asks for: how each process of the house said it stands, and when the last backup was taken. */
export class HouseSeen1790000847000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`
      create table house_process (id uuid primary key, seen_at timestamptz not null, standing jsonb not null);
      create table backup_taken (only_one boolean primary key default true check (only_one), at timestamptz not null, rows bigint not null)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table backup_taken; drop table house_process');
  }
}
