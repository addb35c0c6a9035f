import type { HouseStatus } from '@stokehold/domain/contract';
import { useMay } from '../../live/use-setup.js';
import { useStatus } from '../../live/use-status.js';
import { useYard } from '../../live/use-yard.js';
import { ageText } from '../../parts/age.js';
import { Failure } from '../../parts/failure.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { Sheet } from '../../parts/sheet.js';
import { useFigures } from '../../units/use-figures.js';
import { useDeskWords } from '../../words/desk.js';
import { useStatusWords } from '../../words/status.js';
import { lostSaid, partSaid, whenText, worstFirst, type PartSaid } from './part-said.js';
import css from './status.module.css';

/** How the house itself stands: what is wrong with it, since when, what still works and what to do. */
export function StatusScreen() {
  const say = useStatusWords();
  const desk = useDeskWords();
  const figures = useFigures();
  const isThere = useYard() !== undefined;
  const mayManage = useMay('manage');
  const { status, lost, ageS } = useStatus();
  if (!isThere) return <Opening />;
  if (!mayManage) return <Sheet title={say('title')}><p>{desk('onlyManagerSees')}</p></Sheet>;
  if (typeof lost === 'object') return <Sheet title={say('title')}><Failure of={lost} /></Sheet>;
  const own = lost === undefined ? [] : [lostSaid(lost, status && ageS !== undefined ? { age: ageText(ageS), lastAt: status.at } : undefined, { say, figures })];
  const known = status ? worstFirst(status.parts).map((part) => partSaid(part, status.at, { say, figures })) : [];
  // What a board finds by itself is newer than what it was told of the same part.
  const parts = [...own, ...known.filter(({ part }) => !own.some((one) => one.part === part))];
  return (
    <Sheet title={say('title')} beside={status && <AsOf status={status} />}>
      <Summary parts={parts} isLost={lost !== undefined} />
      <Parts title={say('wrong')} parts={parts.filter(({ state }) => state === 'down' || state === 'limps')} />
      <Parts title={say('works')} parts={parts.filter(({ state }) => state === 'works')} />
      <Parts title={say('unused')} parts={parts.filter(({ state }) => state === 'unused')} />
    </Sheet>
  );
}

function AsOf({ status: { at, version, runsSince } }: { readonly status: HouseStatus }) {
  const say = useStatusWords();
  const figures = useFigures();
  return <p className={css['quiet']}>{say('asOf', { time: figures.time(at), version, since: whenText(runsSince, at, figures) })}</p>;
}

/** The one sentence for who only wants to know whether to read on. */
function Summary({ parts, isLost }: { readonly parts: readonly PartSaid[]; readonly isLost: boolean }) {
  const say = useStatusWords();
  const wrong = parts.filter(({ state }) => state === 'down' || state === 'limps').length;
  if (parts.length === 0) return <p>{say('looking')}</p>;
  return (
    <p className={css['summary']} role="status">
      {wrong === 0 ? say('is.well') : say('is.wrong', { count: wrong })} {isLost && say('is.unknown')}
    </p>
  );
}

function Parts({ title, parts }: { readonly title: string; readonly parts: readonly PartSaid[] }) {
  if (parts.length === 0) return null;
  return (
    <Panel title={title}>
      <ul className={css['parts']}>
        {parts.map((part) => (part.still === undefined ? <Quiet key={part.part} part={part} /> : <Wrong key={part.part} part={part} />))}
      </ul>
    </Panel>
  );
}

/** A part that needs nobody: its name, what is known of it, and since when. */
function Quiet({ part: { name, means, toDo, since } }: { readonly part: PartSaid }) {
  return (
    <li className={css['part']}>
      <h3>{name}</h3>
      <p>
        {means} {toDo && <span className={css['quiet']}>{toDo}</span>}
      </p>
      {since && <p className={css['since']}>{since}</p>}
    </li>
  );
}

function Wrong({ part: { state, name, stands, since, means, still, toDo } }: { readonly part: PartSaid }) {
  const say = useStatusWords();
  return (
    <li className={`${css['wrong']} ${state === 'down' ? css['down'] : ''}`}>
      <h3>
        <span aria-hidden="true">▲ </span>
        {name} <span className={css['stands']}>{since === undefined ? stands : `${stands}, ${since}`}</span>
      </h3>
      <p className={css['means']}>{means}</p>
      <dl>
        <dt>{say('stillWorks')}</dt>
        <dd>{still}</dd>
        <dt>{say('toDo')}</dt>
        <dd className={css['do']}>{toDo}</dd>
      </dl>
    </li>
  );
}
