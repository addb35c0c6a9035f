// What the wood's store asks of PostgreSQL. Stock is never summed here: its sums are kept with every move.

const LOT_COLUMNS = `id, name, species, length_m as "lengthM", thickness_m as "thicknessM", moisture_frac as moisture, extract(epoch from bought_at)::float8 as "boughtAt",
  bought_pieces as "boughtPieces", price_cents as "priceCents", extract(epoch from cut_at)::float8 as "cutAt", extract(epoch from split_at)::float8 as "splitAt",
  length_deviation_m as "lengthDeviationM", in_stack as "inStack", on_carts as "onCarts", burned, lost, offcuts`;
export const LOTS = `select ${LOT_COLUMNS} from lot where yard_id = $1 order by bought_at, name`;
/** In order of id: two that hold several lots never wait for each other. */
export const HOLD_LOTS = `select ${LOT_COLUMNS} from lot where yard_id = $1 and id = any($2) order by id for update`;
export const CARTS = `
select pit_id as "pitId", lot_id as "lotId", pieces, trimmed from cart_wood join lot on lot.id = lot_id
where lot.yard_id = $1 and pieces > 0 order by pit_id, pulled_at desc nulls last, name`;
/** The lots of a cart and what lies on it, both held: the lot first, as whoever moves its wood does. */
export const HOLD_CART = `
select lot_id as "lotId", pieces, trimmed from lot join cart_wood on lot_id = lot.id
where yard_id = $1 and pit_id = $2 and pieces > 0 order by lot.id for update`;
/** Entries of the ledger, with the sums of their lots and carts. */
export const MOVE = `
with moved as (
  insert into wood_move (id, yard_id, lot_id, pit_id, kind, stack_pieces, cart_pieces, trimmed_pieces, moved_at, crew_member_id, check_id, reason, device_id, recorded_at)
  select id, $1, lot_id, pit_id, kind, stack_pieces, cart_pieces, trimmed_pieces, moved_at, crew_member_id, check_id, reason, $3, $4
  from jsonb_to_recordset($2::jsonb) as told (id uuid, lot_id uuid, pit_id uuid, kind text, stack_pieces int, cart_pieces int, trimmed_pieces int, moved_at timestamptz, crew_member_id uuid, check_id uuid, reason text)
  returning lot_id, pit_id, kind, stack_pieces, cart_pieces, trimmed_pieces, moved_at
), of_lot as (
  select lot_id, sum(stack_pieces) as stack, sum(cart_pieces) as cart, sum(stack_pieces + cart_pieces) filter (where kind = 'burned') as burned, sum(stack_pieces + cart_pieces) filter (where kind in ('recounted', 'trimmed')) as found
  from moved group by lot_id
), lots as (
  update lot set in_stack = in_stack + stack, on_carts = on_carts + cart, burned = lot.burned - coalesce(of_lot.burned, 0), lost = lost - coalesce(found, 0)
  from of_lot where lot.id = of_lot.lot_id
), days as (
  insert into lot_burned (lot_id, day, pieces)
  select lot_id, (moved_at at time zone 'UTC')::date, -sum(stack_pieces + cart_pieces) from moved where kind = 'burned' group by 1, 2
  on conflict (lot_id, day) do update set pieces = lot_burned.pieces + excluded.pieces
)
insert into cart_wood (pit_id, lot_id, pieces, trimmed, pulled_at)
select pit_id, lot_id, sum(cart_pieces), sum(trimmed_pieces), max(moved_at) filter (where kind = 'pulled') from moved where pit_id is not null group by pit_id, lot_id
on conflict (pit_id, lot_id) do update set pieces = cart_wood.pieces + excluded.pieces, trimmed = cart_wood.trimmed + excluded.trimmed, pulled_at = greatest(cart_wood.pulled_at, excluded.pulled_at)`;

/** The number of the mark before which a pit burned, and the splits, one text a pit and lot: a year of nights comes in a few dozen lines. */
export const BURNED = `
select pit_id, lot_id, string_agg(nth || ' ' || pieces, ',') as burned from (
  select wood_move.pit_id, lot_id, coalesce(width_bucket(moved_at, marks.at), 0) as nth, -sum(cart_pieces + stack_pieces) as pieces
  from wood_move left join jsonb_to_recordset($4::jsonb) as marks (pit_id uuid, at timestamptz[]) on marks.pit_id = wood_move.pit_id
  where yard_id = $1 and kind = 'burned' and moved_at >= $2 and moved_at <= $3 group by wood_move.pit_id, lot_id, nth
) as stretch group by pit_id, lot_id order by pit_id, lot_id`;

/** Splits of each lot burned before an instant: whole days from their sums, the day of the instant from the ledger. */
export const BURNED_BEFORE = `
with day as (select ($2::timestamptz at time zone 'UTC')::date as day), burned as (
  select lot_id, pieces from lot_burned join lot on lot.id = lot_id where yard_id = $1 and day < (select day from day)
  union all
  select lot_id, -(cart_pieces + stack_pieces) from wood_move
  where yard_id = $1 and kind = 'burned' and moved_at >= (select day::timestamp at time zone 'UTC' from day) and moved_at < $2
) select lot_id, sum(pieces)::int as pieces from burned group by lot_id`;
