import { useLoading } from '../../live/use-loading.js';
import { useYard } from '../../live/use-yard.js';
import { Caution } from '../../parts/caution.js';
import { Failure } from '../../parts/failure.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { Sheet } from '../../parts/sheet.js';
import { useFigures } from '../../units/use-figures.js';
import { useLoadingWords } from '../../words/loading.js';
import type { YardState } from '@stokehold/domain/contract';
import { setAsideLine } from './loading-words.js';
import css from './loading.module.css';
import { PitLoading } from './pit-loading.js';

/** What should lie in which zone of each pit, and why; what to turn and swap when. */
export function LoadingScreen() {
  const state = useYard();
  return state ? <Loaded state={state} /> : <Opening />;
}

function Loaded({ state }: { readonly state: YardState }) {
  const say = useLoadingWords();
  const figures = useFigures();
  const { loading, failed } = useLoading(state);
  const telling = { say, figures, state };
  return (
    <Sheet wide title={say('title')} beside={loading && <p className={`figure ${css['quiet']}`}>{say('madeFor', { time: figures.time(loading.madeAt) })}</p>}>
      <Failure of={failed} />
      {!loading && !failed && <p role="status">{say('making')}</p>}
      <Caution about="lift" />
      <Caution about="food" />
      {state.pits.length === 0 && <p>{say('noPits')}</p>}
      {loading && loading.setAside.length > 0 && (
        <Panel title={say('setAside')}>
          <ul className={css['list']}>
            {loading.setAside.map((aside, i) => <li key={i} className={css['warn']}>▲ {setAsideLine(telling, aside)}</li>)}
          </ul>
        </Panel>
      )}
      <div className={css['pits']}>
        {state.pits.map((view) => {
          const own = loading?.pits.find(({ pitId }) => pitId === view.pit.id);
          return own && <PitLoading key={view.pit.id} view={view} loading={own} telling={telling} />;
        })}
      </div>
    </Sheet>
  );
}
