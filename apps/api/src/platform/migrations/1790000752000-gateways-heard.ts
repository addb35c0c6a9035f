import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What a broker says of the gateways behind it. */
export class GatewaysHeard1790000752000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`create table gateway_status (device_id uuid primary key references device on delete cascade, silent_since timestamptz)`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table gateway_status');
  }
}
