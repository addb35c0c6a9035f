import { useQuery } from '@tanstack/react-query';
import type { AlarmReport, YardState } from '@stokehold/domain/contract';
import { ask } from '../../live/ask.js';
import { AlarmList } from '../../parts/alarm-list.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useAlarmWords } from '../../words/alarm.js';
import { useSharedWords } from '../../words/shared.js';
import css from './night.module.css';

const ANEW_MS = 30_000;
const hundredths = (value: number) => Math.round(value * 100) / 100;

/** The alarms that stand, and what the night's came to, beside the figures that it is held against. */
export function AlarmsPanel({ state }: { readonly state: YardState }) {
  const say = useAlarmWords();
  const report = useQuery({ queryKey: ['alarm-report'], refetchInterval: ANEW_MS, queryFn: () => ask('alarmReport', {}), placeholderData: (before) => before });
  return (
    <>
      <Panel title={say('title')}>
        {state.alarms.length > 0 ? <AlarmList state={state} /> : <p className={css['quiet']}>{say('none')}</p>}
      </Panel>
      {report.data && <Report report={report.data} state={state} />}
    </>
  );
}

function Report({ report, state }: { readonly report: AlarmReport; readonly state: YardState }) {
  const say = useAlarmWords();
  const figures = useFigures();
  const { targets, priorityFrac } = report;
  const shares = Object.fromEntries(Object.entries(priorityFrac).map(([priority, frac]) => [priority, figures.percent(frac)]));
  return (
    <Panel title={say('report.title')}>
      {report.calls === 0 ? <p className={css['quiet']}>{say('report.quiet')}</p> : (
        <>
          <table className="figure">
            <thead>
              <tr><th scope="col">{say('report.person')}</th><th scope="col">{say('report.calls')}</th><th scope="col">{say('report.mean')}</th><th scope="col">{say('report.most')}</th></tr>
            </thead>
            <tbody>
              {report.people.map(({ personId, calls, meanPerTenMinutes, mostInTenMinutes }) => (
                <tr key={personId}>
                  <th scope="row">{state.people.find(({ id }) => id === personId)?.name ?? ''}</th>
                  <td>{calls}</td><td>{hundredths(meanPerTenMinutes)}</td><td>{mostInTenMinutes}</td>
                </tr>
              ))}
              <tr>
                <th scope="row">{say('report.target')}</th>
                <td>≤ {targets.quietNight}</td><td>≤ {targets.meanPerTenMinutes}</td><td>≤ {targets.mostPerTenMinutes}</td>
              </tr>
            </tbody>
          </table>
          <p>{say('report.priorities', shares)}</p>
          <Worst report={report} state={state} />
        </>
      )}
    </Panel>
  );
}

function Worst({ report, state }: { readonly report: AlarmReport; readonly state: YardState }) {
  const say = useAlarmWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const pitOf = (pitId: string | null) => state.pits.find(({ pit }) => pit.id === pitId)?.pit.name ?? '';
  return (
    <>
      <h3>{say('report.worst')}</h3>
      <ul>
        {report.badActors.map(({ kind, pitId, calls, frac }) => (
          <li key={`${kind} ${pitId}`}>{say('report.worstOne', { alarm: shared(`alarm.${kind}`), pit: pitOf(pitId), count: calls, percent: figures.percent(frac) })}</li>
        ))}
      </ul>
    </>
  );
}
