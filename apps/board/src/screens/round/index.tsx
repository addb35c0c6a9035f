import type { YardState } from '@stokehold/domain/contract';
import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { ask } from '../../live/ask.js';
import { deviceNow } from '../../live/device-clock.js';
import { takeBack, type Kept } from '../../live/kept.js';
import { useClock } from '../../live/use-clock.js';
import { useKept, useRecord, useSending } from '../../live/use-kept.js';
import { useBecome, useMe } from '../../live/use-me.js';
import { useConnection, useYard } from '../../live/use-yard.js';
import { Button } from '../../parts/button.js';
import { ConnectionNotice } from '../../parts/connection-notice.js';
import { Opening } from '../../parts/opening.js';
import { PracticeBand } from '../../parts/practice-band.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useCallOut } from './call-out.js';
import { checkOf, draftOf, fireInHand, keepDraft, type Draft } from './draft.js';
import { FireCheck } from './fire-check.js';
import { FireHead } from './fire-head.js';
import { RefusedList, WaitingList } from './kept-list.js';
import { nextFire } from './my-work.js';
import css from './round.module.css';
import { TopLine } from './top-line.js';
import { useJustDone } from './use-just-done.js';
import { FirstTask, WhatNext } from './what-next.js';

interface RoundProps {
  readonly state: YardState;
  readonly personId: string;
}

/** What was recorded last, at once and until the next is: on this phone first, then sent. */
function Echo({ what, seenAt }: { readonly what: string; readonly seenAt: string }) {
  const say = useRoundWords();
  const waiting = useKept().find((one) => one.route === 'recordCheck' && one.input.seenAt === seenAt);
  if (waiting?.refused) return null;
  return (
    <p className={css['echo']} role="status">
      ✓ {say(waiting ? 'recorded' : 'sent', { what })}
    </p>
  );
}

function Round({ state, personId }: RoundProps) {
  const say = useRoundWords();
  const figures = useFigures();
  const nowMs = useClock();
  const { record, full } = useRecord();
  const justDone = useJustDone();
  const [chosen, setChosen] = useState(fireInHand);
  const [corrected, setCorrected] = useState(0);
  const [echo, setEcho] = useState<{ what: string; seenAt: string }>();
  const view = nextFire(state, personId, chosen, justDone.fires);
  const due = view?.due;
  useCallOut(view?.pit.id, !due ? undefined : nowMs >= Date.parse(due.latestSafeAt) ? 'past' : nowMs >= Date.parse(due.dueAt) ? 'due' : undefined);

  const done = async (draft: Draft) => {
    if (!view) return false;
    const seenAt = deviceNow(state.yard.practice);
    const check = checkOf(draft, view.pit.id, seenAt);
    if (!check || !(await record('recordCheck', check))) return false;
    setEcho({ what: say('what.recordCheck', { pit: view.pit.name, time: figures.time(seenAt) }), seenAt });
    justDone.note(view.pit.id);
    setChosen(undefined);
    scrollTo({ top: 0 });
    return true;
  };
  const correct = async (kept: Kept) => {
    if (kept.route !== 'recordCheck') return;
    const check = kept.input;
    keepDraft(check.pitId, draftOf(check));
    setChosen(check.pitId);
    setCorrected(corrected + 1);
    await takeBack(kept.nth);
    scrollTo({ top: 0 });
  };
  const choose = (pitId: string) => {
    setChosen(pitId);
    scrollTo({ top: 0 });
  };
  return (
    <>
      <TopLine {...{ state, personId, nowMs }} pitId={view?.pit.id} />
      {full && (
        <p className={css['refused']} role="alert">
          {say('full')}
        </p>
      )}
      <RefusedList state={state} onCorrect={(kept) => void correct(kept)} />
      {echo && <Echo {...echo} />}
      <FirstTask {...{ state, personId }} pitId={view?.pit.id} onFire={choose} />
      {view ? (
        <>
          <FireHead {...{ state, view, personId, nowMs }} />
          <FireCheck key={`${view.pit.id}${corrected}`} view={view} onDone={done} />
        </>
      ) : (
        <h1>{say('nothing')}</h1>
      )}
      <WaitingList state={state} personId={personId} />
      <WhatNext {...{ state, personId, nowMs }} onFire={choose} />
    </>
  );
}

function Leave() {
  const say = useRoundWords();
  const { me } = useMe();
  const become = useBecome();
  const [, go] = useLocation();
  const leave = async () => {
    await ask('signOut', {});
    become(undefined);
    go('/sign-in');
  };
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
    </div>
  );
}

/** The phone in a gloved hand: my next check, what to put on, and four touches to record it, signal or not. */
export function RoundScreen() {
  useSending();
  const say = useRoundWords();
  const { me } = useMe();
  const state = useYard();
  const connection = useConnection();
  const title = say('title');
  useEffect(() => {
    document.title = `${title} · Stokehold`;
  }, [title]);
  if (!me?.person) return null;
  return (
    <>
      <PracticeBand />
      <ConnectionNotice />
      {state ? (
        <main className={css['round']}>
          <Round state={state} personId={me.person.id} />
          <Leave />
        </main>
      ) : (
        <Opening away={connection.kind === 'stale'} />
      )}
    </>
  );
}
