import type { RecordsView } from '@stokehold/domain/contract';
import type { Paper } from '../../parts/paper.js';
import { LOG_NAMES, type LogTable, logTable, type Saying } from './log-tables.js';

/** More lines than anybody reads on paper; a week of twelve pits is about half of it. */
export const MOST_ON_PAPER = 5000;

export const linesOf = (view: RecordsView): number => LOG_NAMES.reduce((sum, log) => sum + view[log].length, 0);

/** Name of a file that every system takes: the stretch and nothing that somebody typed. */
export const fileName = ({ from, until }: RecordsView, what: string): string => `records-${from.slice(0, 10)}-${until.slice(0, 10)}${what}`;

/** The sentences that an inspector reads first. */
export function headLines({ say, figures }: Saying, view: RecordsView): readonly string[] {
  return [
    say('stretch', { from: `${figures.date(view.from)} ${figures.time(view.from)}`, until: `${figures.date(view.until)} ${figures.time(view.until)}` }), say('madeAt', { time: `${figures.date(view.madeAt)} ${figures.time(view.madeAt)}` }),
    ...(view.yard.practice ? [say('practice')] : []),
  ];
}
export const footLines = ({ say }: Saying, { head }: RecordsView): readonly string[] => [say('kept'), say('limits'), say('temps'), say('end', { nth: head.nth, link: head.link })];

/** All logs as one paper; corrections stand in rows of their own below their lines. */
export function recordsPaper(saying: Saying, view: RecordsView): Paper {
  const rowsOf = ({ rows, heads }: LogTable) => rows.flatMap(({ cells, corrections }) => [cells, ...corrections.map((said) => ['', said, ...heads.slice(2).map(() => '')])]);
  return {
    title: `${view.yard.name}: ${saying.say('title')}`,
    lines: headLines(saying, view),
    tables: LOG_NAMES.map((log) => logTable(saying, view, log)).map((table) => ({ title: table.title, heads: table.heads, rows: table.rows.length > 0 ? rowsOf(table) : [[saying.say('none'), ...table.heads.slice(1).map(() => '')]] })),
    notes: footLines(saying, view),
  };
}

type Cell = string | number;
const plain = (value: unknown): Cell => (typeof value === 'string' || typeof value === 'number' ? value : value === null || value === undefined ? '' : typeof value === 'boolean' ? String(value) : JSON.stringify(value));

/** A log as rows of a table for other programs: the fields of the JSON, one head a field, instants in UTC, SI units. */
export function csvRows(view: RecordsView, log: LogTable['log']): readonly (readonly Cell[])[] {
  const lines: readonly object[] = log === 'held' ? view.held.flatMap(({ findings, ...cook }) => findings.map((finding) => ({ ...cook, ...finding }))) : view[log];
  const heads = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  return [heads, ...lines.map((line) => heads.map((head) => plain((line as Record<string, unknown>)[head])))];
}
