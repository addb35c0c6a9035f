import { RECORD_LOGS, type RecordLog, type RecordsView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Panel } from '../../parts/panel.js';
import { savePaper } from '../../parts/paper.js';
import { csvOf, saveFile, saveJson } from '../../parts/save-file.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { useFoodWords } from '../../words/food.js';
import { useRecordsWords } from '../../words/records.js';
import { useSharedWords } from '../../words/shared.js';
import { CorrectForm } from './correct-form.js';
import { csvRows, fileName, footLines, headLines, linesOf, MOST_ON_PAPER, recordsPaper } from './handed-out.js';
import { LOG_NAMES, type LogRow, type LogTable, logTable, type Saying } from './log-tables.js';
import css from './records.module.css';

function useSaying(): Saying {
  return { say: useRecordsWords(), shared: useSharedWords(), food: useFoodWords(), fire: useFireWords(), figures: useFigures() };
}

/** What was kept of a stretch, log by log, with the ways to take it away. */
export function NightRecords({ view }: { readonly view: RecordsView }) {
  const saying = useSaying();
  const { say } = saying;
  const lines = linesOf(view);
  return (
    <>
      <div className={css['intro']}>
        {headLines(saying, view).map((line) => <p key={line} className="figure">{line}</p>)}
        <p className={css['deeds']}>
          <Button onClick={() => saveJson(fileName(view, '.json'), view)}>{say('save.json')}</Button>
          <Button disabled={lines > MOST_ON_PAPER} onClick={() => void savePaper(fileName(view, '.pdf'), recordsPaper(saying, view))}>{say('save.pdf')}</Button>
        </p>
        {lines > MOST_ON_PAPER && <p role="status">{say('tooLong', { count: lines })}</p>}
      </div>
      {LOG_NAMES.map((log) => <LogPanel key={log} view={view} table={logTable(saying, view, log)} />)}
      <Caution about="food" />
      <div className={css['foot']}>{footLines(saying, view).map((line) => <p key={line}>{line}</p>)}</div>
    </>
  );
}

const canCorrect = (log: LogTable['log']): log is RecordLog => RECORD_LOGS.some((one) => one === log);

function LogPanel({ view, table }: { readonly view: RecordsView; readonly table: LogTable }) {
  const say = useRecordsWords();
  const [correcting, setCorrecting] = useState<LogRow>();
  const { log, title, heads, rows } = table;
  return (
    <Panel title={title} beside={rows.length > 0 && <Button onClick={() => saveFile(fileName(view, `-${log}.csv`), csvOf(csvRows(view, log)))}>{say('save.csv')}</Button>}>
      {rows.length === 0 && <p>{say('none')}</p>}
      {correcting && canCorrect(log) && <CorrectForm log={log} row={correcting} onDone={() => setCorrecting(undefined)} />}
      {rows.length > 0 && (
        <div className={css['scroll']} tabIndex={0} role="group" aria-label={title}>
          <table className={`figure ${css['table']}`}>
            <thead>
              <tr>
                {heads.map((head) => <th key={head} scope="col">{head}</th>)}
                {canCorrect(log) && <td className={css['correct']} />}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => <LogLine key={row.id} row={row} columns={heads.length + 1} onCorrect={canCorrect(log) ? () => setCorrecting(row) : undefined} />)}
            </tbody>
          </table>
        </div>
      )}
    </Panel>
  );
}

/** Names and notes stand each in a piece of its own: marks that turn the reading around turn nothing else. */
function LogLine({ row, columns, onCorrect }: { readonly row: LogRow; readonly columns: number; readonly onCorrect: (() => void) | undefined }) {
  const say = useRecordsWords();
  const [first, ...cells] = row.cells;
  return (
    <>
      <tr>
        <th scope="row"><bdi>{first}</bdi></th>
        {cells.map((cell, nth) => <td key={nth}><bdi>{cell}</bdi></td>)}
        {onCorrect && <td className={css['correct']}><Button look="bare" onClick={onCorrect}>{say('correct')}</Button></td>}
      </tr>
      {row.corrections.map((said) => <tr key={said} className={css['beside']}><td colSpan={columns}><bdi>{said}</bdi></td></tr>)}
    </>
  );
}
