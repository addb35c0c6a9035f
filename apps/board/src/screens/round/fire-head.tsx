import type { PitView, YardState } from '@stokehold/domain/contract';
import { Troubles } from '../../parts/troubles.js';
import type { Trouble } from '../../parts/troubles-of.js';
import { useFigures } from '../../units/use-figures.js';
import { useFireWords } from '../../words/fire.js';
import { useRoundWords } from '../../words/round.js';
import { adviceSentence } from './advice-sentence.js';
import { lastPlace, walkM } from './my-work.js';
import css from './round.module.css';

interface FireHeadProps {
  readonly state: YardState;
  readonly view: PitView;
  readonly personId: string;
  readonly nowMs: number;
  readonly troubles: readonly Trouble[];
}

const SOON_MIN = 5;

/** Which fire, how soon, how far, and what to do there with the reason for it. */
export function FireHead({ state, view, personId, nowMs, troubles }: FireHeadProps) {
  const say = useRoundWords();
  const fire = useFireWords();
  const figures = useFigures();
  const minutes = view.due ? Math.floor((Date.parse(view.due.dueAt) - nowMs) / 60_000) : undefined;
  const late = minutes !== undefined && minutes < 0;
  const past = view.due ? nowMs >= Date.parse(view.due.latestSafeAt) : false;
  const level = minutes === undefined || (minutes <= SOON_MIN && !late) ? css['soon'] : late ? css['late'] : undefined;
  const from = lastPlace(state, personId);
  const walk = from && from.pit.id !== view.pit.id ? walkM(from.pit, view.pit) : undefined;
  const advice = view.advice && adviceSentence(view.advice, { say, fire, figures, nowMs });
  const soon = troubles.filter(({ level }) => level === 'soon');
  const runsAway = troubles.some(({ code }) => code === 'running-away');
  return (
    <>
      <h1 className={css['which']}>
        <span>{view.pit.name}</span>
        <span className={`${css['when']} ${level ?? ''} figure`} data-past={past}>
          {late && <span aria-hidden="true">▲ </span>}
          {minutes === undefined ? say('dueUnknown') : late ? say('late', { count: -minutes - 1 }) : say('dueIn', { count: minutes })}
        </span>
      </h1>
      <Troubles troubles={troubles.filter(({ level }) => level === 'now')} />
      {!runsAway && (
        <p className={css['why']}>
          {walk !== undefined && <span className={css['quiet']}>{say('walk', { walk: figures.of('walk', walk) })}. </span>}
          {advice ? (
            <>
              <strong>{advice.order}</strong> {advice.reason}
            </>
          ) : (
            say('noAdvice')
          )}
        </p>
      )}
      {soon.length > 0 && (
        <p className={css['soon']}>
          <span aria-hidden="true">▲ </span>
          {soon.map(({ title }) => title).join(' · ')}
        </p>
      )}
    </>
  );
}
