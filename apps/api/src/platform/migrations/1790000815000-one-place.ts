import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A yard lies where its settings say; a forecast keeps the place that it was asked for. Who said it for the forecast alone has said it for the yard. */
export class OnePlace1790000815000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('update yard set latitude_deg = lat_deg, longitude_deg = lon_deg from forecast where yard_id = yard.id and latitude_deg is null');
  }

  /** The places may stay: the yard had the columns before. */
  async down(): Promise<void> {}
}
