import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What lies where, kept beside the ledger of wood and written with it: no question about stock sums the ledger. */
const UP = `
alter table lot
  add column in_stack integer not null default 0,
  add column on_carts integer not null default 0,
  add column burned integer not null default 0,
  add column lost integer not null default 0;
update lot set in_stack = moved.in_stack, on_carts = moved.on_carts, burned = moved.burned, lost = moved.lost
from (
  select lot_id, sum(stack_pieces) as in_stack, sum(cart_pieces) as on_carts,
    coalesce(-sum(stack_pieces + cart_pieces) filter (where kind = 'burned'), 0) as burned,
    coalesce(-sum(stack_pieces + cart_pieces) filter (where kind = 'recounted'), 0) as lost
  from wood_move group by lot_id
) as moved where moved.lot_id = lot.id;

create table cart_wood (
  pit_id uuid not null references pit on delete cascade,
  lot_id uuid not null references lot on delete cascade,
  pieces integer not null,
  pulled_at timestamptz,
  primary key (pit_id, lot_id)
);
insert into cart_wood
select pit_id, lot_id, sum(cart_pieces), max(moved_at) filter (where kind = 'pulled') from wood_move where pit_id is not null group by pit_id, lot_id;

create table lot_burned (
  lot_id uuid not null references lot on delete cascade,
  day date not null,
  pieces integer not null,
  primary key (lot_id, day)
);
insert into lot_burned
select lot_id, (moved_at at time zone 'UTC')::date, -sum(stack_pieces + cart_pieces) from wood_move where kind = 'burned' group by 1, 2;
`;

const DOWN = `
drop table lot_burned, cart_wood;
alter table lot drop column lost, drop column burned, drop column on_carts, drop column in_stack;
`;

export class WoodAsItLies1790000730000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
