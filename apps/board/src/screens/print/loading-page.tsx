import type { PitLoadingView, PitView, YardState } from '@stokehold/domain/contract';
import { useLoading } from '../../live/use-loading.js';
import { Caution } from '../../parts/caution.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { useFigures } from '../../units/use-figures.js';
import { usePrintWords } from '../../words/print.js';
import { drawnLies } from '../loading/loading-rows.js';
import { PrintPage } from './page.js';
import css from './print.module.css';

interface PitProps {
  readonly view: PitView;
  readonly loading: PitLoadingView;
  readonly state: YardState;
}

function LoadedPit({ view: { pit }, loading, state }: PitProps) {
  const say = usePrintWords();
  const figures = useFigures();
  const cut = (id: string) => state.cooks.find((cook) => cook.id === id)?.cut ?? '';
  return (
    <li>
      <h3>{pit.name}</h3>
      <PitDrawing pit={pit} lies={drawnLies(loading, state.cooks)} bedFrac={null} lit title={pit.name} />
      <ul>
        {loading.placings.map(({ cookId, zone, pieces, comesOffAt }) => (
          <li key={`${cookId}/${zone}`} className={`figure ${css['tick']}`}>
            {say('zone', { zone: zone + 1 })}
            {zone === 0 && `, ${say('fireEnd')}`}: <strong>{say('pieces', { pieces, cut: cut(cookId) })}</strong> {say('comesOff', { time: figures.dayTime(comesOffAt) })}
          </li>
        ))}
      </ul>
    </li>
  );
}

/** What lies where on each pit, drawn as the pits stand in the yard, with the time at which it comes off. */
export function LoadingPage({ state, nowMs }: { readonly state: YardState; readonly nowMs: number }) {
  const say = usePrintWords();
  const { loading } = useLoading(state);
  const pits = state.pits.flatMap((view) => {
    const own = loading?.pits.find(({ pitId }) => pitId === view.pit.id);
    return own && own.placings.length > 0 ? [{ view, own }] : [];
  });
  return (
    <PrintPage title={say('sheet.loading')} nowMs={nowMs}>
      {!loading && <p>{say('making')}</p>}
      {loading && pits.length === 0 && <p>{say('noLoading')}</p>}
      <ul className={css['loads']}>
        {pits.map(({ view, own }) => (
          <LoadedPit key={view.pit.id} view={view} loading={own} state={state} />
        ))}
      </ul>
      <Caution about="lift" />
    </PrintPage>
  );
}
