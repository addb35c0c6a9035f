import type { RecordLog } from '@stokehold/domain/contract';

// What the records ask of PostgreSQL: $1 the yard, $2 from, $3 until, $4 lines at most. Names are as they are now.

const iso = (column: string) => `to_char(date_trunc('second', ${column}) at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
/** Who, and with which device. */
const BY = 'who.name as person, device.name as device';
const joinBy = (person: string, device: string) => `left join crew_member who on who.id = ${person} left join device on device.id = ${device}`;

const FIRE = `
select c.id, pit.name as pit, ${BY}, ${iso('c.seen_at')} as at, ${iso('c.device_seen_at')} as "deviceAt", ${iso('c.arrived_at')} as "arrivedAt", bed, split_left as left, raked, splits, size, lot.name as lot,
  fire_end_temp_c as "fireEndTempC", stack_end_temp_c as "stackEndTempC", smoke, case when door is not null then jsonb_build_object('door', door, 'damper', damper, 'screen', screen) end as air, note,
  ${iso('was_due_at')} as "wasDueAt", marks
from fire_check c join pit on pit.id = c.pit_id left join lot on lot.id = c.lot_id ${joinBy('c.crew_member_id', 'c.device_id')}
where c.yard_id = $1 and seen_at >= $2 and seen_at < $3 order by seen_at, arrived_at, c.id limit $4`;

const FOOD = `
select f.id, f.cook_id as "cookId", cook.cut, ${BY}, ${iso('f.at')} as at, ${iso('device_at')} as "deviceAt", ${iso('recorded_at')} as "arrivedAt", f.kind, stage, temp_c as "tempC", wrapped_in as "wrappedIn", action,
  limit_name as limit, note, by_probe as "byProbe", corrects, exists (select from food_entry later where later.corrects = f.id) as corrected
from food_entry f join cook on cook.id = f.cook_id ${joinBy('f.crew_member_id', 'f.device_id')}
where f.yard_id = $1 and f.at >= $2 and f.at < $3 order by f.at, recorded_at, f.id limit $4`;

const WOOD = `
select w.id, lot.name as lot, pit.name as pit, ${BY}, w.kind, ${iso('moved_at')} as at, null as "deviceAt", ${iso('recorded_at')} as "arrivedAt", stack_pieces as "stackPieces", cart_pieces as "cartPieces", reason
from wood_move w join lot on lot.id = w.lot_id left join pit on pit.id = w.pit_id ${joinBy('w.crew_member_id', 'w.device_id')}
where w.yard_id = $1 and moved_at >= $2 and moved_at < $3 order by moved_at, w.id limit $4`;

const ALARMS = `
select a.id, a.kind, pit.name as pit, cook.cut, limit_name as limit, ${iso('raised_at')} as "raisedAt", ${iso('returned_at')} as "returnedAt", ${iso('acknowledged_at')} as "acknowledgedAt", who.name as "acknowledgedBy",
  (select count(*) from alarm_call where alarm_id = a.id)::int as calls
from alarm a left join pit on pit.id = a.pit_id left join cook on cook.id = a.cook_id left join crew_member who on who.id = a.acknowledged_by
where a.yard_id = $1 and raised_at >= $2 and raised_at < $3 order by raised_at, a.id limit $4`;

const HANDOVERS = `
select id, ${iso('signed_at')} as "signedAt", note, summary from handover
where yard_id = $1 and signed_at >= $2 and signed_at < $3 order by signed_at, id limit $4`;

const CORRECTIONS = `
select c.id, ${BY}, ${iso('at')} as at, log, line, is_right as "isRight", because from record_correction c ${joinBy('c.crew_member_id', 'c.device_id')}
where c.yard_id = $1 and (at >= $2 and at < $3 or c.line = any($5)) order by at, c.id limit $4`;

/** All that was done, but for what probes sent: that is every few seconds. */
const TRAIL = `
select nth::int, ${iso('at')} as at, ${BY}, command, command_key as key, body from audit_entry e ${joinBy('e.crew_member_id', 'e.device_id')}
where e.yard_id = $1 and at >= $2 and at < $3 and command <> 'record-readings' order by nth limit $4`;

export const LOGS = { fire: FIRE, food: FOOD, wood: WOOD, alarms: ALARMS, handovers: HANDOVERS, trail: TRAIL } as const;
export type AskedLog = keyof typeof LOGS;
export { CORRECTIONS };

/** Whether a yard has this line: $1 the yard, $2 the line. */
export const HAS_LINE: Readonly<Record<RecordLog, string>> = {
  fire: 'select from fire_check where yard_id = $1 and id::text = $2',
  food: 'select from food_entry where yard_id = $1 and id::text = $2',
  wood: 'select from wood_move where yard_id = $1 and id::text = $2',
  hours: `select from shift_person p join shift on shift.id = p.shift_id where yard_id = $1 and p.shift_id || '/' || p.crew_member_id = $2`,
  alarms: 'select from alarm where yard_id = $1 and id::text = $2',
  handovers: 'select from handover where yard_id = $1 and id::text = $2',
};

export const NIGHTS = `
select ${iso('starts_at')} as "startsAt", ${iso('ends_at')} as "endsAt" from shift
where yard_id = $1 and starts_at <= $3 and ends_at > $2 order by starts_at desc`;
