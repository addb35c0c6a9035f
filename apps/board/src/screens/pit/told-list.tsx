import { useQuery } from '@tanstack/react-query';
import type { CheckView, FirePage } from '@stokehold/domain/contract';
import { useState } from 'react';
import { ask } from '../../live/ask.js';
import { airSaid } from '../../parts/air-said.js';
import { Button } from '../../parts/button.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { usePitWords, type SayPitWords } from '../../words/pit.js';
import { useSharedWords, type SaySharedWords } from '../../words/shared.js';
import css from './pit.module.css';
import { toldRows, type ToldOutcome, type ToldPoint, type ToldRow } from './told-rows.js';

const FIRST = 6;

/** Every check of the night: what was forecast then, and what came. */
export function ToldList({ page, names }: { readonly page: FirePage; readonly names: ReadonlyMap<string, string> }) {
  const say = usePitWords();
  const shared = useSharedWords();
  const [whole, setWhole] = useState(false);
  const since = page.night?.from;
  const { data: checks } = useQuery({
    queryKey: ['checks', page.pitId, since, page.told.at(-1)?.checkId],
    queryFn: () => ask('checks', { pitId: page.pitId, since: new Date(Date.parse(since ?? '') - 1000).toISOString() }),
    enabled: since !== undefined,
    placeholderData: (before) => before,
  });
  const rows = toldRows(page, checks ?? []);
  return (
    <Panel title={say('atChecks')}>
      {rows.length === 0 && <p>{say('noChecks')}</p>}
      <ol className={css['told']}>
        {rows.slice(0, whole ? undefined : FIRST).map((row) => (
          <Row key={row.checkId} row={row} names={names} />
        ))}
      </ol>
      {rows.length > FIRST && <Button onClick={() => setWhole(!whole)}>{shared(whole ? 'do.less' : 'do.more')}</Button>}
    </Panel>
  );
}

function Row({ row, names }: { readonly row: ToldRow; readonly names: ReadonlyMap<string, string> }) {
  const say = usePitWords();
  const shared = useSharedWords();
  const fire = useFireWords();
  const figures = useFigures();
  const { check, advised, asAdvised } = row;
  const who = (check?.personId && names.get(check.personId)) ?? '';
  return (
    <li>
      <div className={css['checked']}>
        <strong className="figure">{say('check.head', { time: figures.time(row.lookedAt), who })}</strong>
        {check && (
          <span>
            {[
              say('check.seen', { bed: shared(`bed.${check.bed}`), left: shared(`left.${check.left}`) }),
              say('check.did', { did: didSaid(check, say, shared) }),
              ...(check.air ? [say('check.air', { air: airSaid(check.air, fire) })] : []),
              ...(asAdvised ? [say('check.took')] : advised ? [say('check.advised', { action: shared(`action.${advised}`) })] : []),
            ].join(' · ')}
          </span>
        )}
      </div>
      {row.outcome && <Outcome outcome={row.outcome} />}
      <ul className={`${css['points']} figure`}>
        {row.points.map((point) => (
          <Point key={point.aheadS} point={point} />
        ))}
      </ul>
    </li>
  );
}

/** What had come when somebody looked again, and how the band fared. */
function Outcome({ outcome }: { readonly outcome: ToldOutcome }) {
  const say = usePitWords();
  const figures = useFigures();
  const { at, lowC, highC, cameC, side, wasToLeave, left } = outcome;
  const wasTold = wasToLeave === null ? say('band.toHold') : wasToLeave === 'already' ? say('band.toBeOut') : say('band.toLeave', { time: figures.time(wasToLeave) });
  const came = left === null ? say('band.held') : left !== 'already' && say('band.left', { time: figures.time(left) });
  const band = came ? `${wasTold}; ${came}` : say('band.out');
  return (
    <p className="figure">
      {say('outcome.at', { time: figures.time(at), low: figures.bare('temp', lowC), high: figures.degrees(highC) })}{' '}
      <strong className={side === 'inside' ? css['strong'] : css['soon']}>
        {side !== 'inside' && <span aria-hidden="true">{side === 'above' ? '▲ ' : '▼ '}</span>}
        {say('came', { temp: figures.degrees(cameC) })}, {say(side)}
      </strong>
      . {band}.
    </p>
  );
}

function didSaid({ splits, size, raked }: CheckView, say: SayPitWords, shared: SaySharedWords): string {
  if (splits === 0) return say(raked ? 'raked' : 'looked');
  return size === 'offcut' ? say('putOffcut', { count: splits }) : say('put', { count: splits, size: shared(`size.${size}`) });
}

function Point({ point }: { readonly point: ToldPoint }) {
  const say = usePitWords();
  const figures = useFigures();
  const { aheadS, lowC, highC, cameC, side, uncompared } = point;
  return (
    <li data-side={side}>
      <span className={css['quiet']}>{say('ahead', { span: figures.span(aheadS) })}</span>
      <span>{say('told', { low: figures.bare('temp', lowC), high: figures.degrees(highC) })}</span>
      {cameC === null ? (
        <span className={css['quiet']}>{uncompared && say(`uncompared.${uncompared}`)}</span>
      ) : (
        <strong>
          {side !== 'inside' && <span aria-hidden="true">{side === 'above' ? '▲ ' : '▼ '}</span>}
          {say('came', { temp: figures.degrees(cameC) })}
          {side && <span className={css['quiet']}> {say(side)}</span>}
        </strong>
      )}
    </li>
  );
}
