import { useQuery } from '@tanstack/react-query';
import type { WhyView, Work, YardState } from '@stokehold/domain/contract';
import { HOUR_S } from '@stokehold/domain/quantity';
import { ask } from '../../live/ask.js';
import { passes } from '../../live/refused.js';
import { useCommand } from '../../live/use-command.js';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Failure } from '../../parts/failure.js';
import { Pick } from '../../parts/field.js';
import { Panel } from '../../parts/panel.js';
import { costsInWords, hindranceInWords, lateInWords, peopleInWords, workToAsk, type Answering } from './answers.js';
import { addressOf, useAsking } from './asked-work.js';
import css from './night.module.css';
import { capital, workInWords } from './plan-changes.js';

/** Work that begins within this time is offered in the list; anything else by its mark in the picture. */
const OFFERED_S = 2 * HOUR_S;

/** Why somebody has a piece of work, who else could take it at what cost, and why it is late. */
export function WhyPanel({ state, answering, nowS }: { readonly state: YardState; readonly answering: Answering; readonly nowS: number }) {
  const { plan: say } = answering;
  const { work, askWork } = useAsking();
  return (
    <Panel title={say('why.title')} beside={work && <Button onClick={() => askWork(undefined)}>{say('why.close')}</Button>}>
      {work ? <Why key={JSON.stringify(work)} {...{ state, answering, work }} /> : <Offered {...{ state, answering, nowS }} />}
    </Panel>
  );
}

function Offered({ state, answering, nowS }: { readonly state: YardState; readonly answering: Answering; readonly nowS: number }) {
  const { askWork } = useAsking();
  const offered = workToAsk(state, nowS + OFFERED_S);
  return (
    <Pick label={answering.plan('why.choose')} value="" onChange={(event) => askWork(offered[Number(event.target.value)])}>
      <option value="" />
      {offered.map((work, n) => (
        <option key={n} value={n}>{workLine(work, state, answering)}</option>
      ))}
    </Pick>
  );
}

/** "02:10 Check of Larch, Ana" */
export function workLine(work: Work, { plan }: Pick<YardState, 'plan'>, answering: Answering): string {
  const one = plan?.assignments.find((assignment) => JSON.stringify(assignment.work) === JSON.stringify(work));
  const what = capital(workInWords(work, answering));
  const who = work.kind === 'break' ? '' : `, ${peopleInWords(one?.people ?? [], answering)}`;
  return one ? `${answering.time(one.startsAt)} ${what}${who}` : `▲ ${what}`;
}

interface WhyProps {
  readonly state: YardState;
  readonly answering: Answering;
  readonly work: Work;
}

function Why({ state, answering, work }: WhyProps) {
  const { plan: say } = answering;
  const answer = useQuery({
    queryKey: ['why', work, state.plan?.madeAt], queryFn: () => ask('whyWork', addressOf(work)), placeholderData: (before) => before, retry: (_count, error) => passes(error),
  });
  return (
    <div className={css['rows2']}>
      <strong className={css['big']}>{capital(workInWords(work, answering))}</strong>
      {answer.isPending && <p>{say('why.asking')}</p>}
      <Failure of={answer.error as Parameters<typeof Failure>[0]['of']} />
      {answer.data && <Answer {...{ answering, work }} view={answer.data} />}
    </div>
  );
}

function Answer({ answering, work, view }: { readonly answering: Answering; readonly work: Work; readonly view: WhyView }) {
  const { plan: say, time } = answering;
  const mayPlan = useMay('plan');
  const pin = useCommand('pinWork');
  const decide = (people: WhyView['others'][number]['people'] | null) => void pin.send({ work, people, startsAt: null });
  const { assignment, reason, others, hindered } = view;
  const late = lateInWords(view, answering);
  const decides = mayPlan && work.kind !== 'break' && reason !== 'frozen';
  return (
    <>
      {assignment && (
        <p className="figure">
          {say('why.at', { who: peopleInWords(assignment.people, answering), from: time(assignment.startsAt), until: time(assignment.endsAt) })}
          {assignment.pinned && ` · ${say('why.pinned')}`}
        </p>
      )}
      {reason && <p>{say(`reason.${reason}`)}</p>}
      {late.length > 0 && <Lines title={say('late.title')} lines={late} warn />}
      {reason && work.kind !== 'break' && (
        <section>
          <h3>{say('others.title')}</h3>
          {others.length === 0 && <p>{say('others.none')}</p>}
          <ul className={css['sentences']}>
            {others.map(({ people, costs }) => (
              <li key={people.join()} className={css['line']}>
                <span><strong>{peopleInWords(people, answering)}</strong>: {costsInWords(costs, answering) || say('others.same')}</span>
                {decides && <Button disabled={pin.sending} onClick={() => decide(people)}>{say('hand.give', { who: peopleInWords(people, answering) })}</Button>}
              </li>
            ))}
          </ul>
        </section>
      )}
      {hindered.length > 0 && <Lines title={say('hindered.title')} lines={hindered.map((one) => `${hindranceInWords(one, answering)}.`)} />}
      {decides && assignment && (
        <span className={css['suggest']}>
          {assignment.pinned
            ? <Button disabled={pin.sending} onClick={() => decide(null)}>{say('hand.back')}</Button>
            : <Button disabled={pin.sending} onClick={() => decide(assignment.people)}>{say('hand.keep')}</Button>}
        </span>
      )}
      <Failure of={pin.failed} />
    </>
  );
}

function Lines({ title, lines, warn }: { readonly title: string; readonly lines: readonly string[]; readonly warn?: boolean }) {
  return (
    <section>
      <h3 className={warn ? css['warn'] : undefined}>{warn ? '▲ ' : ''}{title}</h3>
      <ul className={css['sentences']}>
        {lines.map((line) => <li key={line}>{line}</li>)}
      </ul>
    </section>
  );
}
