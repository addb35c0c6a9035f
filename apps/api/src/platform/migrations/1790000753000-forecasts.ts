import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The weather forecast of each yard that said where it stands. */
const UP = `
create table forecast (
  yard_id uuid primary key references yard on delete cascade,
  lat_deg double precision not null,
  lon_deg double precision not null,
  hours jsonb not null,
  fetched_at timestamptz,
  failing_since timestamptz,
  trouble text
);
`;

export class Forecasts1790000753000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table forecast');
  }
}
