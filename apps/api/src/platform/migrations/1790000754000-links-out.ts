import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Where alarms and due checks are told to, what was told, and the secret addresses of calendars. */
const UP = `
create table webhook (
  yard_id uuid primary key references yard on delete cascade,
  url text not null,
  secret text not null
);

create table link_message (
  yard_id uuid not null references yard on delete cascade,
  ref text not null,
  kind text not null check (kind in ('alarm', 'due-check')),
  at timestamptz not null,
  body jsonb not null,
  webhook_at timestamptz,
  broker_at timestamptz,
  primary key (yard_id, ref)
);
create index link_message_at on link_message (at);

create table calendar_address (
  crew_member_id uuid primary key references crew_member on delete cascade,
  yard_id uuid not null references yard on delete cascade,
  token_hash bytea not null unique
);
`;

export class LinksOut1790000754000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop table calendar_address, link_message, webhook');
  }
}
