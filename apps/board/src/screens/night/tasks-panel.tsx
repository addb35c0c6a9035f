import { epochS, later, toIso, type PitId, type TaskId } from '@stokehold/domain/quantity';
import { taskKind, type TaskKind, type YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { commandKey } from '../../live/command-key.js';
import { yardNowMs } from '../../live/heard.js';
import { useCommand } from '../../live/use-command.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Choice } from '../../parts/choice.js';
import { Failure } from '../../parts/failure.js';
import { Field, Pick } from '../../parts/field.js';
import { FormReading, type TypedWall, type Wrongs } from '../../parts/form-reading.js';
import { Fields, Form, Panel } from '../../parts/panel.js';
import { WallField } from '../../parts/wall-field.js';
import { useWrongText } from '../../parts/wrong-text.js';
import { useFigures } from '../../units/use-figures.js';
import { wallOf } from '../../units/typed-wall-time.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import css from './night.module.css';

const QUARTER_S = 900;

/** All other work of the night, and the place to add some. */
export function TasksPanel({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  return (
    <>
      <Panel title={say('tasks.title')}>
        {state.tasks.length === 0 && <p>{say('tasks.none')}</p>}
        <ul className={css['rows']}>
          {[...state.tasks].sort((a, b) => a.dueAt.localeCompare(b.dueAt)).map((task) => (
            <TaskRow key={task.id} {...{ task, state }} />
          ))}
        </ul>
      </Panel>
      <TaskForm state={state} />
    </>
  );
}

function TaskRow({ task, state }: { readonly task: YardState['tasks'][number]; readonly state: YardState }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const command = useCommand('finishTask');
  const pit = state.pits.find((view) => view.pit.id === task.pitId)?.pit.name;
  const assigned = state.plan?.assignments.find(({ work }) => work.kind === 'task' && work.taskId === task.id);
  const names = assigned?.people.map((id) => state.people.find((person) => person.id === id)?.name ?? '').join(say('and'));
  return (
    <li>
      <div className={css['line']}>
        <span className={task.doneAt ? css['quiet'] : undefined}>
          <strong className={css['big']}>{shared(`task.${task.kind}`)}</strong> {pit}{' '}
          <span className="figure">
            {task.doneAt ? say('mark.done', { time: figures.time(task.doneAt) }) : say('tasks.window', { due: figures.time(task.dueAt), until: figures.time(task.latestAt) })}
            {', '}
            {figures.span(task.lengthS)}
            {task.people === 2 && `, ${say('tasks.two')}`}
          </span>{' '}
          {!task.doneAt && names}
          {task.note && <><br /><span className={css['quiet']}>{task.note}</span></>}
        </span>
        {!task.doneAt && (
          <Button disabled={command.sending} onClick={() => void command.send({ taskId: task.id, doneAt: toIso(epochS(yardNowMs() / 1000)) })}>
            {shared('do.done')}
          </Button>
        )}
      </div>
      <Failure of={command.failed} />
    </li>
  );
}

function TaskForm({ state }: { readonly state: YardState }) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const wrongText = useWrongText();
  const command = useCommand('addTask');
  const zone = state.yard.timeZone;
  const [kind, setKind] = useState<TaskKind>('load');
  const [pitId, setPitId] = useState<string>(state.shift?.pits[0]?.pitId ?? '');
  const [due, setDue] = useState<TypedWall>(() => ({ wall: wallOf(epochS((Math.floor(yardNowMs() / 1000 / QUARTER_S) + 3) * QUARTER_S), zone), again: false }));
  const [early, setEarly] = useState('15');
  const [late, setLate] = useState('20');
  const [length, setLength] = useState('15');
  const [people, setPeople] = useState<'1' | '2'>('1');
  const [note, setNote] = useState('');
  const [wrongs, setWrongs] = useState<Wrongs>({});
  const [done, setDone] = useState(false);

  const send = async () => {
    const reading = new FormReading(figures, zone);
    const dueAt = reading.at('due', due);
    const earlyMin = reading.number('early', early, { min: 0, max: 600 });
    const lateMin = reading.number('late', late, { min: 0, max: 600 });
    const lengthMin = reading.number('length', length, { min: 1, max: 240 });
    setWrongs(reading.wrongs);
    setDone(false);
    if (!reading.good || dueAt === undefined || earlyMin === undefined || lateMin === undefined || lengthMin === undefined) return;
    const added = await command.send({
      id: commandKey() as TaskId, kind, pitId: pitId === '' ? null : (pitId as PitId),
      earliestAt: toIso(later(dueAt, -earlyMin * 60)), dueAt: toIso(dueAt), latestAt: toIso(later(dueAt, lateMin * 60)),
      lengthS: Math.round(lengthMin * 60), people: people === '2' ? 2 : 1, ...(note.trim() !== '' && { note: note.trim() }),
    });
    if (!added) return;
    setNote('');
    setDone(true);
  };
  return (
    <Panel title={say('tasks.add')}>
      <Form onSend={() => void send()} sending={command.sending} failed={command.failed} does={shared('do.add')} done={done ? say('tasks.added') : undefined}>
        <Choice label={say('tasks.kind')} columns={4} value={kind} onChoose={setKind} options={taskKind.options.map((value) => ({ value, label: shared(`task.${value}`) }))} />
        <Fields>
          <Pick label={say('tasks.pit')} value={pitId} onChange={(event) => setPitId(event.target.value)}>
            <option value="">{say('tasks.noPit')}</option>
            {state.pits.filter(({ pit }) => !pit.retired).map(({ pit }) => (
              <option key={pit.id} value={pit.id}>{pit.name}</option>
            ))}
          </Pick>
          <WallField label={say('tasks.due')} zone={zone} value={due} wrong={wrongText(wrongs['due'])} onChange={setDue} />
        </Fields>
        <Fields narrow>
          <Field label={say('tasks.early')} unit="min" inputMode="numeric" value={early} wrong={wrongText(wrongs['early'])} onChange={(event) => setEarly(event.target.value)} />
          <Field label={say('tasks.late')} unit="min" inputMode="numeric" value={late} wrong={wrongText(wrongs['late'])} onChange={(event) => setLate(event.target.value)} />
          <Field label={say('tasks.length')} unit="min" inputMode="numeric" value={length} wrong={wrongText(wrongs['length'])} onChange={(event) => setLength(event.target.value)} />
        </Fields>
        <Choice label={say('tasks.people')} value={people} onChoose={setPeople} options={[{ value: '1', label: say('tasks.one') }, { value: '2', label: say('tasks.two') }]} />
        <Field label={say('tasks.note')} value={note} maxLength={500} onChange={(event) => setNote(event.target.value)} />
        <Caution about={kind === 'clear-ash' ? 'ash' : kind === 'light' ? 'fire' : kind === 'trim' ? 'saw' : 'lift'} />
      </Form>
    </Panel>
  );
}
