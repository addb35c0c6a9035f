import type { YardState } from '@stokehold/domain/contract';
import { deviceNow } from '../../live/device-clock.js';
import { useKept, useRecord } from '../../live/use-kept.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { firesByDue, meOnShift, myWork, type MyWork } from './my-work.js';
import css from './round.module.css';

interface WhatNextProps {
  readonly state: YardState;
  readonly personId: string;
  readonly nowMs: number;
  readonly onFire: (pitId: string) => void;
}

const SHOWN = 6;
const LATE_MIN = 30;

/** Says that a task is done; and which of those said so are still on their way. */
function useFinish(state: YardState) {
  const { record } = useRecord();
  const finished = new Set(useKept().flatMap((one) => (one.route === 'finishTask' && !one.refused ? [one.input.taskId] : [])));
  const finish = (taskId: string) => {
    const task = state.tasks.find((one) => one.id === taskId);
    if (task) void record('finishTask', { taskId: task.id, doneAt: deviceNow(state.yard.practice) });
  };
  return { finished, finish };
}

function Row({ work, state, onFire, onDone }: { readonly work: MyWork; readonly state: YardState; readonly onFire: (pitId: string) => void; readonly onDone: (taskId: string) => void }) {
  const say = useRoundWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const time = figures.time(work.atMs);
  if (work.kind === 'break') return <li className={css['row']}>{say('breakAt', { time })}</li>;
  if (work.kind === 'check')
    return (
      <li className={css['row']}>
        <Button className={css['wide']} onClick={() => onFire(work.view.pit.id)}>
          {work.view.pit.name} <span className={css['quiet']}>{time}</span>
        </Button>
      </li>
    );
  const pit = state.pits.find((view) => view.pit.id === work.task.pitId)?.pit.name;
  const name = [shared(`task.${work.task.kind}`), pit].filter(Boolean).join(' · ');
  return (
    <li className={css['row']}>
      <span>
        <strong>{name}</strong> <span className={css['quiet']}>{time}</span>
        {work.task.note && <span className={css['quiet']}> {work.task.note}</span>}
        {work.task.kind === 'trim' && <Caution about="saw" />}
      </span>
      <Button className={css['taskDone']} aria-label={say('taskDone', { task: name })} onClick={() => onDone(work.task.id)}>
        {say('done')}
      </Button>
    </li>
  );
}

/** My own standing: break begins and ends, and, small, that I am away or late. */
function Standing({ state, personId, nowMs }: Omit<WhatNextProps, 'onFire'>) {
  const say = useRoundWords();
  const { record } = useRecord();
  const waits = useKept().some((one) => one.route === 'reportBreak' && !one.refused);
  const me = meOnShift(state, personId);
  if (!me) return <p className={css['quiet']}>{state.shift ? say('notSignedOn') : say('noShift')}</p>;
  const running = me.breaks.find((one) => one.beganAt !== null && one.endedAt === null);
  const next = me.breaks.find((one) => one.beganAt === null);
  const presence = (presence: 'late' | 'away' | 'here') =>
    void record('reportPresence', {
      personId: me.personId,
      state: presence,
      ...(presence === 'late' && { until: new Date(nowMs + LATE_MIN * 60_000).toISOString() }),
    });
  return (
    <>
      {running && (
        <Button look="main" className={css['done']} disabled={waits} onClick={() => void record('reportBreak', { breakId: running.id, state: 'ended' })}>
          {say('breakEnd')}
        </Button>
      )}
      {!running && next && (
        <Button className={css['done']} disabled={waits} onClick={() => void record('reportBreak', { breakId: next.id, state: 'begun' })}>
          {say('breakBegin')}
        </Button>
      )}
      <div className={css['pair']}>
        {me.presence !== 'here' && <Button onClick={() => presence('here')}>{say('iAmHere')}</Button>}
        {me.presence === 'here' && <Button onClick={() => presence('away')}>{say('iAmAway')}</Button>}
        {me.presence !== 'late' && <Button onClick={() => presence('late')}>{say('iAmLate')}</Button>}
      </div>
    </>
  );
}

/** Below the check: what comes next for me, my break, and every other fire. */
export function WhatNext({ state, personId, nowMs, onFire }: WhatNextProps) {
  const say = useRoundWords();
  const { finished, finish } = useFinish(state);
  const work = myWork(state, personId).filter((one) => one.kind !== 'task' || !finished.has(one.task.id));
  return (
    <section className={css['next']}>
      <Standing {...{ state, personId, nowMs }} />
      {work.length > 0 && <h2>{say('mine')}</h2>}
      <ul>
        {work.slice(0, SHOWN).map((one, n) => (
          <Row key={`${one.kind}${n}`} work={one} state={state} onFire={onFire} onDone={finish} />
        ))}
      </ul>
      <h2>{say('otherFires')}</h2>
      <div className={css['pair']}>
        {firesByDue(state).map((view) => (
          <Button key={view.pit.id} className={css['fire']} onClick={() => onFire(view.pit.id)}>
            {view.pit.name}
          </Button>
        ))}
      </div>
    </section>
  );
}

/** A task of mine that the plan has before the check on show stands above it. */
export function FirstTask({ state, personId, pitId, onFire }: Omit<WhatNextProps, 'nowMs'> & { readonly pitId: string | undefined }) {
  const { finished, finish } = useFinish(state);
  const mine = myWork(state, personId).filter((one) => one.kind !== 'task' || !finished.has(one.task.id));
  const [first] = mine;
  const check = mine.find((one) => one.kind === 'check' && one.view.pit.id === pitId);
  if (first?.kind !== 'task' || !check || first.atMs > check.atMs) return null;
  return (
    <ul className={css['first']}>
      <Row work={first} state={state} onFire={onFire} onDone={finish} />
    </ul>
  );
}
