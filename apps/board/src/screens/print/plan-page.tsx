import type { YardState } from '@stokehold/domain/contract';
import { Caution } from '../../parts/caution.js';
import { useFigures } from '../../units/use-figures.js';
import { usePrintWords } from '../../words/print.js';
import { useSharedWords } from '../../words/shared.js';
import { PrintPage } from './page.js';
import { breaksAhead, fireRows, hoursAhead, taskRows, type FireRow } from './plan-rows.js';
import css from './print.module.css';

/** So many tasks stand on the page; what comes later is printed again before then. */
const MOST_TASKS = 24;

interface PlanProps {
  readonly state: YardState;
  readonly nowMs: number;
}

/** Who is called what, for cells with little room. */
const namesOf = (state: YardState) => new Map(state.people.map(({ id, name }) => [id as string, name]));

function FireName({ row, nowMs }: { readonly row: FireRow; readonly nowMs: number }) {
  const say = usePrintWords();
  const figures = useFigures();
  return (
    <th scope="row">
      {row.name}
      <small className="figure">
        {say('band', { low: figures.degrees(row.band.lowC), high: figures.degrees(row.band.highC) })}
        {Date.parse(row.lightAt) > nowMs && ` · ${say('lights', { time: figures.time(row.lightAt) })}`}
      </small>
    </th>
  );
}

function Fires({ state, nowMs }: PlanProps) {
  const say = usePrintWords();
  const figures = useFigures();
  const names = namesOf(state);
  const hours = state.shift ? hoursAhead(state.shift, nowMs) : [];
  const who = (people: readonly string[]) => people.map((id) => names.get(id) ?? '').join(' + ') || say('nobody');
  return (
    <table className={css['fires']}>
      <thead>
        <tr>
          <th scope="col">{say('pit')}</th>
          {hours.map((from) => (
            <th key={from} scope="col" className="figure">
              {figures.time(from)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {fireRows(state, hours).map((row) => (
          <tr key={row.pitId}>
            <FireName {...{ row, nowMs }} />
            {row.hours.map((looks, nth) => (
              <td key={hours[nth]}>
                {looks.map(({ at, people }) => (
                  <span key={at} className={`figure ${css['tick']}`}>
                    {figures.time(at).slice(2)} {who(people)}
                  </span>
                ))}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Tasks({ state }: Pick<PlanProps, 'state'>) {
  const say = usePrintWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const names = namesOf(state);
  const rows = taskRows(state);
  const pitOf = (id: string | null) => state.pits.find(({ pit }) => pit.id === id)?.pit.name;
  return (
    <div>
      <h3>{say('tasks')}</h3>
      <ul className={css['columns']}>
        {rows.slice(0, MOST_TASKS).map(({ task, at, people }) => (
          <li key={task.id} className={`figure ${css['tick']}`}>
            {figures.time(at)} <strong>{[shared(`task.${task.kind}`), pitOf(task.pitId)].filter(Boolean).join(' ')}</strong> {people.map((id) => names.get(id) ?? '').join(' + ') || say('nobody')} {task.note}
          </li>
        ))}
      </ul>
      {rows.length > MOST_TASKS && <p>{say('tasksLeft', { count: rows.length - MOST_TASKS })}</p>}
    </div>
  );
}

function Crew({ state, nowMs }: PlanProps) {
  const say = usePrintWords();
  const figures = useFigures();
  const names = namesOf(state);
  return (
    <div>
      <h3>{say('people')}</h3>
      <ul>
        {state.shift?.people.map((person) => (
          <li key={person.personId} className="figure">
            <strong>{names.get(person.personId)}</strong> {say('hours', { from: figures.time(person.startsAt), until: figures.time(person.endsAt) })}
            {breaksAhead(person).map((at) => ` · ${say('break', { time: figures.time(at) })}`)}
          </li>
        ))}
      </ul>
      <h3>{say('services')}</h3>
      <ul>
        {state.services
          .filter(({ readyBy }) => Date.parse(readyBy) > nowMs)
          .map((service) => (
            <li key={service.id} className="figure">
              {say('ready', { name: service.name, time: figures.dayTime(service.readyBy) })}
            </li>
          ))}
      </ul>
    </div>
  );
}

/** Tonight on one page: each fire with its looks hour by hour, who works when, the tasks, the services. */
export function PlanPage({ state, nowMs }: PlanProps) {
  const say = usePrintWords();
  return (
    <PrintPage title={say('sheet.plan')} nowMs={nowMs}>
      {state.shift ? (
        <>
          <p>{say('checksHow')}</p>
          <Fires {...{ state, nowMs }} />
          <div className={css['pair']}>
            <Tasks state={state} />
            <Crew {...{ state, nowMs }} />
          </div>
          <Caution about="fire" />
        </>
      ) : (
        <p>{say('noShift')}</p>
      )}
    </PrintPage>
  );
}
