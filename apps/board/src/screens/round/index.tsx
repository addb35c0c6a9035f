import type { YardState } from '@stokehold/domain/contract';
import { useEffect, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { Kept } from '../../live/kept.js';
import { useAwake } from '../../live/use-awake.js';
import { useClock } from '../../live/use-clock.js';
import { useKept } from '../../live/use-kept.js';
import { useLeave, useMe } from '../../live/use-me.js';
import { useConnection, useYard } from '../../live/use-yard.js';
import { AlarmList } from '../../parts/alarm-list.js';
import { holds } from '../../parts/alarms-said.js';
import { Button } from '../../parts/button.js';
import { callFor, useCallOut } from '../../parts/call-out.js';
import { ClockSetNotice } from '../../parts/clock-set-notice.js';
import { ConnectionNotice } from '../../parts/connection-notice.js';
import { Opening } from '../../parts/opening.js';
import { PracticeBand } from '../../parts/practice-band.js';
import { Troubles } from '../../parts/troubles.js';
import { runningAwayElsewhere, troublesOf } from '../../parts/troubles-of.js';
import { useTheme } from '../../parts/use-theme.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { ClockNotice } from './clock-notice.js';
import { fireInHand } from './draft.js';
import { FireCheck } from './fire-check.js';
import { FireHead } from './fire-head.js';
import { RefusedList, WaitingList } from './kept-list.js';
import { nextFire } from './my-work.js';
import css from './round.module.css';
import { TopLine } from './top-line.js';
import { useJustDone } from './use-just-done.js';
import { useRecording, type Recorded } from './use-recording.js';
import { FirstTask, WhatNext } from './what-next.js';

interface RoundProps {
  readonly state: YardState;
  readonly personId: string;
}

/** What was recorded last, at once and until the next is: for ten seconds, or until there is signal, on this phone alone, where one touch takes it back; then sent. */
function Echo({ what, seenAt, onUndo }: Recorded & { readonly onUndo: (kept: Kept) => void }) {
  const say = useRoundWords();
  const waiting = useKept().find((one) => one.route === 'recordCheck' && one.input.seenAt === seenAt);
  if (waiting?.refused) return null;
  return (
    <p className={css['echo']} role="status">
      ✓ {say(waiting ? 'recorded' : 'sent', { what })}
      {waiting && <Button onClick={() => onUndo(waiting)}>{say('undo')}</Button>}
    </p>
  );
}

function Full() {
  const say = useRoundWords();
  return (
    <p className={css['refused']} role="alert">
      {say('full')}
    </p>
  );
}

/** The fire to show: chosen by hand, in hand when the page went away, or the next one. */
function useChosen() {
  const [search] = useSearchParams();
  const [chosen, setChosen] = useState(() => search.get('pit') ?? fireInHand());
  const choose = (pitId: string | undefined) => {
    setChosen(pitId);
    scrollTo({ top: 0 });
  };
  return { chosen, choose };
}

function Round({ state, personId }: RoundProps) {
  const say = useRoundWords();
  const fire = useFireWords();
  const figures = useFigures();
  const nowMs = useClock();
  const justDone = useJustDone();
  const { chosen, choose } = useChosen();
  const { done, correct, corrected, recorded, full } = useRecording({ state, choose, onRecorded: justDone.note });
  const view = nextFire(state, personId, chosen, justDone.fires);
  const troubles = view ? troublesOf(view, state.alarms, nowMs, fire, figures) : [];
  // A temperature that runs away stands among the troubles, with its caution.
  const mine = state.alarms.filter(({ kind, pitId, told }) => kind !== 'running-away' && (pitId === view?.pit.id || told?.people.some((id) => id === personId)));
  useCallOut(callFor(state, view, nowMs, personId));
  const top = (
    <>
      <PracticeBand />
      <ConnectionNotice />
      <ClockSetNotice />
      <ClockNotice practice={state.yard.practice} />
      <TopLine {...{ state, personId, nowMs }} pitId={view?.pit.id} />
      {full && <Full />}
      <RefusedList state={state} onCorrect={(kept) => void correct(kept)} />
      <Troubles troubles={runningAwayElsewhere(state, view?.pit.id, fire)} />
      <AlarmList state={state} alarms={mine.filter(holds)} />
      {recorded && <Echo {...recorded} onUndo={(kept) => void correct(kept)} />}
      <FirstTask {...{ state, personId }} pitId={view?.pit.id} onFire={choose} />
    </>
  );
  return (
    <>
      {view ? (
        <FireCheck key={`${view.pit.id}${corrected}`} {...{ view, nowMs, troubles }} onDone={(draft) => done(view, draft)}
          head={<>{top}<FireHead {...{ state, view, personId, nowMs, troubles }} /></>} />
      ) : (
        <>
          {top}
          <h1>{say('nothing')}</h1>
        </>
      )}
      <WaitingList state={state} personId={personId} />
      {/* What is over by itself keeps nobody from the fire. */}
      <AlarmList state={state} alarms={mine.filter((alarm) => !holds(alarm))} />
      <WhatNext {...{ state, personId, nowMs }} onFire={choose} />
    </>
  );
}

function Leave() {
  const say = useRoundWords();
  const { me } = useMe();
  const shared = useSharedWords();
  const { leave, away } = useLeave();
  return (
    <div className={css['pair']}>
      <Button look="bare" onClick={() => void leave()}>
        {say('signedInAs', { who: me?.person?.name ?? '' })}
      </Button>
      {me?.person?.role !== 'crew' && (
        <Link className={css['link']} href="/night">
          {say('toNight')}
        </Link>
      )}
      {away && <p role="alert">{shared('noAnswer')}</p>}
    </div>
  );
}

/** The phone in a gloved hand: my next check, what to put on, and four touches to record it, signal or not. */
export function RoundScreen() {
  useAwake();
  useTheme();
  const say = useRoundWords();
  const { me } = useMe();
  const state = useYard();
  const connection = useConnection();
  const title = say('title');
  useEffect(() => {
    document.title = `${title} · Stokehold`;
  }, [title]);
  if (!me?.person) return null;
  if (!state) return <Opening away={connection.kind === 'stale'} />;
  return (
    <main className={css['round']}>
      <Round state={state} personId={me.person.id} />
      <Leave />
    </main>
  );
}
