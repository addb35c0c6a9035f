import { fromIso, epochS } from '@stokehold/domain/quantity';
import type { Supposition, Work } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useSearchParams } from 'wouter';
import { useClock } from '../../live/use-clock.js';
import { useMay } from '../../live/use-setup.js';
import { useYard } from '../../live/use-yard.js';
import { Opening } from '../../parts/opening.js';
import { PanelLinks } from '../../parts/panel-links.js';
import { Sheet } from '../../parts/sheet.js';
import { useFigures } from '../../units/use-figures.js';
import { offsetChanges } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { AlarmsPanel } from './alarms-panel.js';
import { AskingContext } from './asked-work.js';
import { CookPlanPanel } from './cook-plan/index.js';
import { CooksPanel } from './cooks-panel.js';
import { CrewPanel } from './crew-panel.js';
import { HandoverPanel } from './handover-panel.js';
import { personLanes, pitLanes, spanOf } from './lanes.js';
import { Legend } from './legend.js';
import { NightPicture } from './night-picture.js';
import css from './night.module.css';
import { NowPanels } from './now-panels.js';
import { namesIn } from './plan-changes.js';
import { ServicesPanel } from './services-panel.js';
import { ShiftPanel } from './shift-panel.js';
import { TasksPanel } from './tasks-panel.js';
import { TomorrowPanel } from './tomorrow-panel.js';
import { useAllChecks } from './use-all-checks.js';
import { WindPanel } from './wind-panel.js';

const SHOWS = ['now', 'shift', 'crew', 'cooks', 'services', 'tasks', 'wind', 'alarms', 'handover', 'tomorrow'] as const;
type Show = (typeof SHOWS)[number];
/** Shown to those who plan; the night crew has the rest. */
const PLANNING: readonly Show[] = ['shift', 'services', 'tasks', 'tomorrow'];

export function NightScreen() {
  const say = useNightWords();
  const state = useAllChecks(useYard());
  const figures = useFigures();
  const now = epochS(useClock() / 1000);
  const mayPlan = useMay('plan');
  const [search, setSearch] = useSearchParams();
  const [work, setWork] = useState<Work>();
  const [dragged, setDragged] = useState<Supposition>();
  if (!state) return <Opening />;
  const shows = SHOWS.filter((show) => mayPlan || !PLANNING.includes(show));
  const asked = shows.find((show) => show === search.get('show')) ?? (state.shift || !mayPlan ? 'now' : 'shift');
  const span = spanOf(state);
  const showAnswer = () => setSearch({ show: 'now' });
  const asking = {
    work,
    askWork: (one: Work | undefined) => {
      setWork(one);
      if (one) showAnswer();
    },
    suppose: (what: Supposition) => {
      setDragged(what);
      showAnswer();
    },
  };
  return (
    <AskingContext value={asking}>
    <Sheet wide title={say('title')} beside={<Hours />}>
      {span ? (
        <>
          <NightPicture
            span={span} people={personLanes(state, now)} pits={pitLanes(state, span)} services={state.services} now={now}
            zone={state.yard.timeZone} figures={figures} nameOfPit={namesIn(state).pit}
          />
          <Legend />
        </>
      ) : (
        <p className={css['none']}>{say('noShift')}</p>
      )}
      <PanelLinks label={say('shows')} panels={shows.map((show) => ({ show: show, label: say(`show.${show}`), href: `/night?show=${show}` }))} shown={asked} />
      <div className={css['panels']}>
        {asked === 'now' && <NowPanels {...{ state, dragged }} nowS={now} />}
        {asked === 'shift' && <ShiftPanel state={state} />}
        {asked === 'crew' && <CrewPanel state={state} />}
        {asked === 'cooks' && <CookPlanPanel state={state} />}
        {asked === 'cooks' && <CooksPanel state={state} pitId={search.get('pit')} />}
        {asked === 'services' && <ServicesPanel state={state} />}
        {asked === 'tasks' && <TasksPanel state={state} />}
        {asked === 'wind' && <WindPanel state={state} />}
        {asked === 'alarms' && <AlarmsPanel state={state} />}
        {asked === 'handover' && <HandoverPanel state={state} />}
        {asked === 'tomorrow' && <TomorrowPanel nowS={now} />}
      </div>
    </Sheet>
    </AskingContext>
  );
}

/** From when to when the night goes, how many hours that really is, and that the clocks change if they do. */
function Hours() {
  const say = useNightWords();
  const figures = useFigures();
  const state = useYard();
  if (!state?.shift) return null;
  const { startsAt, endsAt } = state.shift;
  const [from, until] = [fromIso(startsAt), fromIso(endsAt)];
  const change = offsetChanges(from, until, state.yard.timeZone)[0];
  return (
    <p className={`figure ${css['hours']}`}>
      {say('hours', { from: figures.dayTime(startsAt), until: figures.dayTime(endsAt), length: figures.span(until - from) })}
      {change && <strong> {say(change.byS > 0 ? 'hoursForward' : 'hoursBack', { length: figures.span(until - from) })}</strong>}
    </p>
  );
}
