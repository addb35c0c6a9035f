import type { MigrationInterface, QueryRunner } from 'typeorm';

const keyed = (columns: string) => `alter table reading drop constraint reading_pkey, add constraint reading_pkey primary key (${columns})`;

/** The key that keeps a reading once begins with its time: what arrives goes to the end of the index, whose pages so become full. */
export class ReadingsByTime1790000820000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(keyed('device_taken_at, probe_id'));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(keyed('probe_id, device_taken_at'));
  }
}
