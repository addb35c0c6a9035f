import type { FirePage, PitView, YardState } from '@stokehold/domain/contract';
import { Link, useLocation, useParams, useSearchParams } from 'wouter';
import { useClock } from '../../live/use-clock.js';
import { useYard } from '../../live/use-yard.js';
import { Failure } from '../../parts/failure.js';
import { Pick } from '../../parts/field.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { PanelLinks } from '../../parts/panel-links.js';
import { Sheet } from '../../parts/sheet.js';
import { Troubles } from '../../parts/troubles.js';
import { runningAwayElsewhere } from '../../parts/troubles-of.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { usePitWords } from '../../words/pit.js';
import { LearnedPanel } from './learned-panel.js';
import { NightRibbon, RibbonLegend } from './night-ribbon.js';
import { NowPanel } from './now-panel.js';
import css from './pit.module.css';
import { SkillPanel } from './skill-panel.js';
import { ToldList } from './told-list.js';
import { UnusedPanel } from './unused-panel.js';
import { useFirePage } from './use-fire-page.js';

/** One pit: how its fire stands, what was forecast of it and what came, what it has taught. */
export function PitScreen() {
  const state = useYard();
  const { pitId } = useParams();
  if (!state || !pitId) return <Opening />;
  return <OnePit key={pitId} state={state} pitId={pitId} />;
}

function OnePit({ state, pitId }: { readonly state: YardState; readonly pitId: string }) {
  const say = usePitWords();
  const fire = useFireWords();
  const nowMs = useClock();
  const [search] = useSearchParams();
  const view = state.pits.find(({ pit }) => pit.id === pitId);
  const shiftId = search.get('night') ?? undefined;
  const { page, refused, again } = useFirePage(pitId, shiftId, view);
  const names = new Map(state.people.map(({ id, name }) => [id as string, name]));
  const title = view?.pit.name ?? say('title');
  const isTonight = page?.night === null || page?.nights[0]?.shiftId === page?.night?.shiftId;
  return (
    <Sheet wide title={title} beside={page && page.nights.length > 1 && <WhichNight page={page} state={state} />}>
      <PanelLinks label={say('otherPits')} shown={pitId} panels={state.pits.map(({ pit }) => ({ show: pit.id as string, label: pit.name, href: `/pit/${pit.id}` }))} />
      <Troubles troubles={runningAwayElsewhere(state, pitId, fire)} />
      <Failure of={refused} />
      {view && isTonight && <NowPanel state={state} view={view} nowMs={nowMs} />}
      {view && isTonight && <Ways view={view} />}
      {!page && !refused && <p>{say('opening')}</p>}
      {page && page.night === null && <p>{say('neverBurned')}</p>}
      {page?.night && <Night {...{ page, nowMs, names, again }} zone={state.yard.timeZone} />}
      <p className={css['quiet']}>{say('estimate')}</p>
    </Sheet>
  );
}

interface NightProps {
  readonly page: FirePage;
  readonly nowMs: number;
  readonly zone: string;
  readonly names: ReadonlyMap<string, string>;
  readonly again: () => Promise<void>;
}

function Night({ page, nowMs, zone, names, again }: NightProps) {
  const say = usePitWords();
  return (
    <>
      <Panel title={say('overNight')}>
        <NightRibbon {...{ page, nowMs, zone }} />
        <RibbonLegend />
      </Panel>
      <div className={css['columns']}>
        <ToldList page={page} names={names} />
        <div className={css['side']}>
          <SkillPanel page={page} />
          <LearnedPanel page={page} names={names} onSetBack={again} />
          <UnusedPanel page={page} />
        </div>
      </div>
    </>
  );
}

/** From here to the fire itself, and to the whole night. */
function Ways({ view }: { readonly view: PitView }) {
  const say = usePitWords();
  return (
    <p className={css['ways']}>
      {view.tonight && <Link href={`/round?pit=${view.pit.id}`}>{say('toRound')}</Link>}
      <Link href="/night">{say('toNight')}</Link>
    </p>
  );
}

function WhichNight({ page, state }: { readonly page: FirePage; readonly state: YardState }) {
  const say = usePitWords();
  const figures = useFigures();
  const [, go] = useLocation();
  return (
    <Pick label={say('whichNight')} value={page.night?.shiftId ?? ''} onChange={(event) => go(`/pit/${page.pitId}?night=${event.target.value}`)}>
      {page.nights.map(({ shiftId, startsAt }) => (
        <option key={shiftId} value={shiftId}>
          {say(state.shift?.id === shiftId ? 'tonight' : 'nightOf', { day: figures.day(startsAt) })}
        </option>
      ))}
    </Pick>
  );
}
