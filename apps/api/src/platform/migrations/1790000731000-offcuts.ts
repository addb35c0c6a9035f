import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Trimmed splits on carts, and offcuts as stock with a ledger of their own. */
const UP = `
alter table wood_move drop constraint wood_move_kind_check;
alter table wood_move
  add constraint wood_move_kind_check check (kind in ('bought', 'pulled', 'brought-back', 'burned', 'recounted', 'trimmed')),
  add column trimmed_pieces integer not null default 0;
alter table cart_wood add column trimmed integer not null default 0;

create table offcut_move (
  id uuid primary key,
  yard_id uuid not null references yard on delete cascade,
  lot_id uuid not null references lot on delete cascade,
  pit_id uuid references pit on delete cascade,
  kind text not null check (kind in ('trimmed', 'burned', 'recounted')),
  pieces integer not null,
  moved_at timestamptz not null,
  crew_member_id uuid references crew_member on delete set null,
  check_id uuid references fire_check on delete set null,
  reason text
);
create index offcut_move_of_lot on offcut_move (lot_id, moved_at);
alter table lot add column offcuts integer not null default 0;
`;

const DOWN = `
alter table lot drop column offcuts;
drop table offcut_move;
alter table cart_wood drop column trimmed;
delete from wood_move where kind = 'trimmed' and cart_pieces = 0;
update wood_move set kind = 'recounted', reason = 'trimmed' where kind = 'trimmed';
alter table wood_move drop column trimmed_pieces, drop constraint wood_move_kind_check;
alter table wood_move add constraint wood_move_kind_check check (kind in ('bought', 'pulled', 'brought-back', 'burned', 'recounted'));
`;

export class Offcuts1790000731000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(UP);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(DOWN);
  }
}
