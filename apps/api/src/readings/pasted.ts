import { type SentReading, sentReading } from '@stokehold/domain/contract';
import { ok, refuse, type Result } from '@stokehold/domain/quantity';
import { parse } from 'csv-parse/sync';

/** What a table of readings holds, and the lines of it that are no reading. */
export interface Pasted {
  readonly readings: readonly SentReading[];
  readonly wrong: readonly { readonly line: number; readonly wants: string }[];
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const NUMBER = /^-?\d+([.,]\d+)?$/;
/** '121.5' and '121,5'; what is no number stays text, so that it is refused as such. */
const numberOf = (text: string) => (NUMBER.test(text) ? Number(text.replace(',', '.')) : text);
/** Spreadsheets write a space where ISO 8601 has a T, and leave the seconds out. */
function instantOf(text: string): string {
  const at = Date.parse(/\d[ T]\d/.test(text) && !/[Z+]|-\d\d:\d\d$/.test(text) ? `${text.replace(' ', 'T')}Z` : text);
  return Number.isNaN(at) ? text : new Date(at).toISOString();
}

/**
 * Reads a table that was pasted or exported: comma, semicolon or tab; a first line with the names probe, time and temp_c or temp_f, in
 * any order. A time without an offset is UTC.
 */
export function parsePasted(text: string): Result<Pasted, 'not-a-table'> {
  let lines: { record: Record<string, string>; info: { lines: number } }[];
  try {
    lines = parse(text, {
      bom: true, columns: (names: string[]) => names.map((name) => name.trim().toLowerCase()), delimiter: delimiterOf(text), info: true, relax_column_count: true, skip_empty_lines: true, trim: true,
    }) as unknown as typeof lines;
  } catch {
    return refuse('not-a-table');
  }
  const names = Object.keys(lines[0]?.record ?? {});
  if (!names.includes('probe') || !names.includes('time') || !(names.includes('temp_c') || names.includes('temp_f'))) return refuse('not-a-table');
  const each = lines.map(({ record, info }) => ({ line: info.lines, read: sentReading.safeParse(sentOf(record)) }));
  return ok({
    readings: each.flatMap(({ read }) => (read.success ? [read.data] : [])),
    wrong: each.flatMap(({ line, read }) => (read.success ? [] : [{ line, wants: read.error.issues.map(({ path, message }) => [path.join('.'), message].filter(Boolean).join(': ')).join('; ') }])),
  });
}

/** As the line of names has it: where that has semicolons or tabs, a comma belongs to a number. */
const delimiterOf = (text: string) => [';', '\t'].find((sign) => (text.split('\n', 1)[0] ?? '').includes(sign)) ?? ',';

function sentOf({ probe = '', time = '', temp_c: tempC, temp_f: tempF }: Record<string, string>): object {
  return {
    ...(UUID.test(probe) ? { probeId: probe.toLowerCase() } : { source: probe }),
    takenAt: instantOf(time),
    ...(tempC ? { tempC: numberOf(tempC) } : { tempF: numberOf(tempF ?? '') }),
  };
}
