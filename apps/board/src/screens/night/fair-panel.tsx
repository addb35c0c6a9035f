import { useQuery } from '@tanstack/react-query';
import type { YardState } from '@stokehold/domain/contract';
import { ask } from '../../live/ask.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { usePlanWords } from '../../words/plan.js';
import { fairPeople, type FairBar } from './fair-shares.js';
import css from './fair-panel.module.css';

const ANEW_MS = 30_000;

/** How work, unpleasant work and walking were shared over the last nights, and how tonight shares them. */
export function FairPanel({ state }: { readonly state: YardState }) {
  const say = usePlanWords();
  const figures = useFigures();
  const fairness = useQuery({ queryKey: ['fairness'], refetchInterval: ANEW_MS, queryFn: () => ask('fairness', {}), placeholderData: (before) => before });
  if (!fairness.data) return null;
  const people = fairPeople(fairness.data);
  const nameOf = (id: string) => state.people.find((one) => one.id === id)?.name ?? '';
  return (
    <Panel title={say('fair.title')}>
      <p className={css['quiet']}>{people.length === 0 ? say('fair.none') : say('fair.since', { day: figures.day(fairness.data.since) })}</p>
      <ul className={css['people']}>
        {people.map(({ personId, nights, bars }) => (
          <li key={personId}>
            <strong>{nameOf(personId)}</strong> <span className={css['quiet']}>{nights > 0 ? say('fair.before', { count: nights }) : ''}</span>
            <dl className={css['bars']}>
              {bars.map((bar) => <Bar key={bar.what} bar={bar} />)}
            </dl>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

function Bar({ bar: { what, beforeS, tonightS, beforeFrac, tonightFrac } }: { readonly bar: FairBar }) {
  const say = usePlanWords();
  const figures = useFigures();
  const shown = (seconds: number | undefined) => (seconds === undefined ? '–' : figures.span(Math.round(seconds / 60) * 60));
  return (
    <>
      <dt>{say(`fair.${what}`)}</dt>
      <dd className="figure">
        <svg width="100%" height="22" viewBox="0 0 100 22" preserveAspectRatio="none" aria-hidden="true">
          <rect className={css['before']} x="0" y="1" width={beforeFrac * 100} height="8" />
          <rect className={css['tonight']} x="0" y="12" width={tonightFrac * 100} height="8" />
        </svg>
      </dd>
      <dd className="figure">{shown(beforeS)}</dd>
      <dd className="figure">{say('fair.tonight')} {shown(tonightS)}</dd>
    </>
  );
}
