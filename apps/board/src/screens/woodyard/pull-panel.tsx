import type { WoodyardView, YardState } from '@stokehold/domain/contract';
import { useClock } from '../../live/use-clock.js';
import { useCommand } from '../../live/use-command.js';
import { useMay } from '../../live/use-setup.js';
import { useWoodyardChanged } from '../../live/use-woodyard.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Failure } from '../../parts/failure.js';
import { Panel } from '../../parts/panel.js';
import { csvOf, saveFile } from '../../parts/save-file.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import css from './forecast.module.css';
import { type LoadBox, pullPicture } from './pull-rows.js';

/** Less of another species than this tastes of nothing else. Source: our choice. */
const WORTH_A_WORD_FRAC = 0.05;

/** Which wood goes to which pit for which hours, and why it changed. */
export function PullPanel({ view, state }: { readonly view: WoodyardView; readonly state: YardState }) {
  const say = useWoodyardWords();
  const command = useCommand('makePull');
  const changed = useWoodyardChanged();
  const mayPlan = useMay('plan');
  const { pull } = view;
  const lotName = (id: string) => state.wood.lots.find((lot) => lot.id === id)?.name ?? '';
  const pitName = (id: string) => state.pits.find(({ pit }) => pit.id === id)?.pit.name ?? '';
  const make = async () => {
    if (await command.send({})) await changed();
  };
  const save = () => {
    if (!pull) return;
    const rows = pull.loads.flatMap((load) => load.wood.map((wood) => [pitName(load.pitId), load.from, load.until, lotName(wood.lotId), wood.isOffcut ? 'offcuts' : 'splits', wood.pieces, wood.isOnCart || wood.isOffcut ? 0 : wood.pieces, wood.cuts]));
    saveFile('pull.csv', csvOf([['pit', 'from', 'until', 'lot', 'kind', 'pieces', 'to haul', 'cuts'], ...rows]));
  };
  return (
    <Panel title={say('pull')} beside={mayPlan && <Button onClick={() => void make()} disabled={command.sending}>{say(pull ? 'pull.again' : 'pull.make')}</Button>}>
      <Failure of={command.failed} />
      {view.repull && <p className={css['now']}>▲ {say(`repull.${view.repull.because}`, { pit: pitName(view.repull.pitId ?? '') })}</p>}
      {!pull && <p>{say('pull.none')}</p>}
      {pull && (
        <>
          <Picture {...{ pull, lotName, pitName }} />
          <Changes {...{ pull, lotName, pitName }} />
          <p className={css['deeds']}>
            <Button onClick={save}>{say('csv')}</Button>
          </p>
          <Caution about="lift" />
        </>
      )}
    </Panel>
  );
}

/** What the last balance changed and why; what the pull costs and how good it is. */
function Changes({ pull, lotName, pitName }: { readonly pull: NonNullable<WoodyardView['pull']>; readonly lotName: (id: string) => string; readonly pitName: (id: string) => string }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  return (
    <>
      {pull.changes.length > 0 && (
        <ul>
          {pull.changes.map(({ pitId, lotId, piecesBefore, piecesAfter, because }) => (
            <li key={`${pitId} ${lotId}`} className="figure">{say(`change.${because}`, { pit: pitName(pitId), lot: lotName(lotId), before: piecesBefore, after: piecesAfter })}</li>
          ))}
        </ul>
      )}
      <p className={`figure ${css['quiet']}`}>
        {say('pull.made', { time: figures.dayTime(pull.madeAt), money: figures.money(pull.woodCents), gap: figures.count(pull.gapFrac * 100, 1) })}
        {pull.worstWetFrac > 0 && ` ${say('pull.wettest', { points: figures.count(pull.worstWetFrac * 100, 1) })}`}
      </p>
    </>
  );
}

function Picture({ pull, lotName, pitName }: { readonly pull: NonNullable<WoodyardView['pull']>; readonly lotName: (id: string) => string; readonly pitName: (id: string) => string }) {
  const figures = useFigures();
  const nowMs = useClock();
  const picture = pullPicture(pull, nowMs);
  return (
    <div className={css['pull']}>
      {picture.rows.map(({ pitId, loads }) => (
        <div key={pitId} className={css['pullRow']}>
          <strong className={css['strong']}>{pitName(pitId)}</strong>
          <div className={css['track']} aria-hidden="true">
            {loads.map(({ fromAt, from, width }) => (
              <i key={fromAt} className={css['load']} style={{ left: `${from * 100}%`, width: `${width * 100}%` }} />
            ))}
            {picture.nowFrac !== undefined && <i className={css['nowMark']} style={{ left: `${picture.nowFrac * 100}%` }} />}
          </div>
          <ul className={css['loads']}>
            {loads.filter((load) => isToldOf(load) && Date.parse(load.untilAt) > nowMs).map((load) => (
              <Load key={load.fromAt} {...{ load, lotName }} />
            ))}
          </ul>
        </div>
      ))}
      <div className={css['pullRow']} aria-hidden="true">
        <span />
        <div className={css['hours']}>
          {picture.hours.map(({ at, frac }) => (
            <span key={at} className="figure" style={{ left: `${frac * 100}%` }}>{figures.time(at)}</span>
          ))}
        </div>
      </div>
    </div>
  );
}

/** A load with nothing in it: the cart holds what these hours need. */
const isToldOf = ({ there, offcuts, haul, shortFrac }: LoadBox) => there.length + offcuts.length + haul.length > 0 || shortFrac > 0;

function Load({ load, lotName }: { readonly load: LoadBox; readonly lotName: (id: string) => string }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const list = (wood: readonly { readonly lotId: string; readonly pieces: number }[]) => wood.map(({ lotId, pieces }) => `${pieces} × ${lotName(lotId)}`).join(', ');
  return (
    <li>
      <span className="figure">{figures.time(Date.parse(load.fromAt))}–{figures.time(Date.parse(load.untilAt))}</span>
      <div>
        {load.there.length > 0 && <p>{say('load.there', { wood: list(load.there) })}</p>}
        {load.offcuts.length > 0 && <p>{say('load.offcuts', { wood: list(load.offcuts) })}</p>}
        {load.haul.length > 0 && <p className={css['strong']}>{say('load.haul', { wood: list(load.haul) })}</p>}
        {load.mixOffFrac >= WORTH_A_WORD_FRAC && <p className={css['soon']}>▲ {say('load.mixOff', { percent: figures.percent(load.mixOffFrac) })}</p>}
        {load.shortFrac > 0 && <p className={css['now']}>▲ {say('load.short', { percent: figures.percent(load.shortFrac) })}</p>}
      </div>
    </li>
  );
}
