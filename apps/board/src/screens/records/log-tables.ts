import { type DeedName, DEEDS, type RecordLog, type RecordsView } from '@stokehold/domain/contract';
import { airSaid } from '../../parts/air-said.js';
import type { Figures } from '../../units/figures.js';
import type { SayFireWords } from '../../words/fire.js';
import type { SayFoodWords } from '../../words/food.js';
import type { SayRecordsWords } from '../../words/records.js';
import type { SaySharedWords } from '../../words/shared.js';
import { entrySaid, findingSaid } from '../food/food-said.js';

/** Everything that is said on a page of records. */
export interface Saying {
  readonly say: SayRecordsWords;
  readonly shared: SaySharedWords;
  readonly food: SayFoodWords;
  readonly fire: SayFireWords;
  readonly figures: Figures;
}
/** A line of a log with what was written beside it later. */
export interface LogRow {
  readonly id: string;
  readonly cells: readonly string[];
  readonly corrections: readonly string[];
}
export interface LogTable {
  readonly log: RecordLog | 'held' | 'trail';
  readonly title: string;
  readonly heads: readonly string[];
  readonly rows: readonly LogRow[];
}

const joined = (...parts: readonly (string | false | null | undefined)[]): string => parts.filter(Boolean).join(', ');

/** When a line was, on the yard's clock, with the device's own time where it differs by a minute or more. */
function whenSaid({ say, figures }: Saying, { at, deviceAt }: { readonly at: string; readonly deviceAt: string | null }): string {
  const off = deviceAt !== null && Math.abs(Date.parse(deviceAt) - Date.parse(at)) >= 60_000;
  return off ? `${figures.dayTime(at)} ${say('deviceAt', { time: figures.time(deviceAt) })}` : figures.dayTime(at);
}

const whoSaid = ({ say }: Saying, person: string | null, byProbe = false) => person ?? say(byProbe ? 'probe' : 'nobody');
const timeOrNone = ({ figures }: Saying, at: string | null) => (at === null ? '–' : figures.time(at));

type Made = Omit<LogTable, 'log' | 'title' | 'rows'> & { readonly rows: readonly Omit<LogRow, 'corrections'>[] };

function fireTable(saying: Saying, { fire }: RecordsView): Made {
  const { say, shared, figures } = saying;
  const temp = (tempC: number | null) => (tempC === null ? '–' : figures.degrees(tempC));
  return {
    heads: [say('head.at'), say('head.arrived'), say('head.who'), say('head.device'), say('head.pit'), say('head.seen'), say('head.done'), say('head.temps'), say('head.note')],
    rows: fire.map((line) => ({
      id: line.id,
      cells: [
        whenSaid(saying, line), timeOrNone(saying, line.arrivedAt), whoSaid(saying, line.person), line.device ?? '–', line.pit,
        joined(say('bed', { grade: shared(`bed.${line.bed}`), left: shared(`left.${line.left}`) }), line.smoke && shared(`smoke.${line.smoke}`)),
        joined(line.raked && say('raked'), say('splits', { count: line.splits }), line.splits > 0 && shared(`size.${line.size}`), line.lot, line.air && airSaid(line.air, saying.fire)),
        `${temp(line.fireEndTempC)} / ${temp(line.stackEndTempC)}`, joined(line.note, ...line.marks.map((mark) => say(`mark.${mark}`))),
      ],
    })),
  };
}

function foodTable(saying: Saying, { food }: RecordsView): Made {
  const { say } = saying;
  return {
    heads: [say('head.at'), say('head.arrived'), say('head.who'), say('head.device'), say('head.cook'), say('head.what'), say('head.note')],
    rows: food.map((line) => ({
      id: line.id,
      cells: [
        whenSaid(saying, line), timeOrNone(saying, line.arrivedAt), whoSaid(saying, line.person, line.byProbe), line.device ?? '–', line.cut, entrySaid(saying.food, saying.figures, line),
        joined(line.note, line.corrects !== null && say('corrects'), line.corrected && say('wasCorrected')),
      ],
    })),
  };
}

function heldTable({ say, food, figures }: Saying, { held }: RecordsView): Made {
  return {
    heads: [say('head.cook'), say('head.limit'), say('head.code'), say('head.held'), say('head.outcome')],
    rows: held.flatMap(({ cookId, cut, pieces, findings }) => findings.map((finding) => ({
      id: `${cookId}/${finding.limit}/${finding.section}`,
      cells: [
        food('list.named', { cut, count: pieces }), food(`limit.${finding.limit}`), food(`code.${finding.code}`, { edition: finding.edition }), findingSaid(food, figures, finding), food(`outcome.${finding.outcome}`),
      ],
    }))),
  };
}

function woodTable(saying: Saying, { wood }: RecordsView): Made {
  const { say } = saying;
  const signed = (pieces: number) => (pieces > 0 ? `+${pieces}` : String(pieces));
  return {
    heads: [say('head.at'), say('head.arrived'), say('head.who'), say('head.device'), say('head.lot'), say('head.what'), say('head.pit'), say('head.stack'), say('head.cart'), say('head.note')],
    rows: wood.map((line) => ({
      id: line.id,
      cells: [
        whenSaid(saying, line), timeOrNone(saying, line.arrivedAt), whoSaid(saying, line.person), line.device ?? '–', line.lot, say(`kind.${line.kind}`), line.pit ?? '–', signed(line.stackPieces), signed(line.cartPieces),
        line.reason ?? '',
      ],
    })),
  };
}

function hoursTable({ say, figures }: Saying, { hours }: RecordsView): Made {
  const spans = (all: readonly { readonly from: string; readonly until: string }[]) => all.map(({ from, until }) => `${figures.time(from)}–${figures.time(until)}`).join(', ') || '–';
  return {
    heads: [say('head.who'), say('head.at'), say('head.until'), say('head.away'), say('head.breaks'), say('head.worked'), say('head.paid')],
    rows: hours.map((line) => ({
      id: line.id, cells: [line.person, figures.dayTime(line.startsAt), figures.dayTime(line.endsAt), spans(line.away), spans(line.breaks), figures.span(line.workedS), figures.span(line.paidS)],
    })),
  };
}

function alarmTable(saying: Saying, { alarms }: RecordsView): Made {
  const { say, shared, figures } = saying;
  return {
    heads: [say('head.alarm'), say('head.about'), say('head.raised'), say('head.over'), say('head.acknowledged'), say('head.who'), say('head.calls')],
    rows: alarms.map((line) => ({
      id: line.id,
      cells: [
        shared(`alarm.${line.kind}`), joined(line.pit, line.cut) || '–', figures.dayTime(line.raisedAt), timeOrNone(saying, line.returnedAt), timeOrNone(saying, line.acknowledgedAt), line.acknowledgedBy ?? '–',
        String(line.calls),
      ],
    })),
  };
}

function handoverTable({ say, figures }: Saying, { handovers }: RecordsView): Made {
  return {
    heads: [say('head.at'), say('head.who'), say('head.to'), say('head.seen'), say('head.note')],
    rows: handovers.map(({ id, signedAt, signedBy, to, fires, splitsLeft, openAlarms, note }) => ({
      id,
      cells: [
        figures.dayTime(signedAt), signedBy, to ?? '–',
        say('handed', { fires: fires.map(({ pit, tempC }) => (tempC === null ? pit : `${pit} ${figures.degrees(tempC)}`)).join(', '), splits: splitsLeft, alarms: openAlarms }), note,
      ],
    })),
  };
}

const isDeed = (command: string): command is DeedName => (DEEDS as readonly string[]).includes(command);
/** In the words of the reader; what an older house called otherwise stands as it was written. */
const deedSaid = ({ say }: Saying, command: string) => (isDeed(command) ? say(`deed.${command}`) : command);

function trailTable(saying: Saying, { trail }: RecordsView): Made {
  const { say, figures } = saying;
  return {
    heads: [say('head.nth'), say('head.at'), say('head.who'), say('head.device'), say('head.what')],
    rows: trail.map(({ nth, at, person, device, command }) => ({ id: String(nth), cells: [String(nth), figures.dayTime(at), whoSaid(saying, person), device ?? '–', deedSaid(saying, command)] })),
  };
}

const TABLES = { fire: fireTable, food: foodTable, held: heldTable, wood: woodTable, hours: hoursTable, alarms: alarmTable, handovers: handoverTable, trail: trailTable } as const;
export const LOG_NAMES = Object.keys(TABLES) as readonly LogTable['log'][];

/** What was written beside a line, in the order in which it was written. */
const besides = ({ say, figures }: Saying, { corrections }: RecordsView, log: string, line: string): readonly string[] =>
  corrections.filter((one) => one.log === log && one.line === line)
    .map(({ at, person, isRight, because }) => say('corrected', { time: figures.dayTime(at), who: person ?? say('nobody'), right: isRight, because }));

/** A log as a table in the words of the reader: the page, the paper and the print are all made from it. */
export function logTable(saying: Saying, view: RecordsView, log: LogTable['log']): LogTable {
  const { heads, rows } = TABLES[log](saying, view);
  return { log, title: saying.say(`log.${log}`), heads, rows: rows.map((row) => ({ ...row, corrections: besides(saying, view, log, row.id) })) };
}
