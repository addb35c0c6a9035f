import type { WoodyardView, YardState } from '@stokehold/domain/contract';
import type { ReactNode } from 'react';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { answersOf } from './answers.js';
import css from './forecast.module.css';

/** What is ready, what to trim, what to buy, will it last the night: in one look. */
export function FourAnswers({ view, state }: { readonly view: WoodyardView; readonly state: YardState }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const lotOf = (id: string) => state.wood.lots.find((lot) => lot.id === id);
  const pitOf = (id: string) => state.pits.find(({ pit }) => pit.id === id)?.pit.name ?? '';
  const { ready, trim, buy, lasts } = answersOf(view, (id) => (lotOf(id)?.inStack ?? 0) + (lotOf(id)?.onCarts ?? 0));
  return (
    <ul className={css['answers']}>
      <Answer title={say('answer.lasts')} hands={lasts.state === 'short' || lasts.haul?.now === true} big={say(`lasts.${lasts.state}`)}>
        {lasts.haul ? say(lasts.haul.now ? 'haulNow' : 'haulBy', { pit: pitOf(lasts.haul.pitId), time: figures.dayTime(lasts.haul.by) }) : say('haulNone')}
      </Answer>
      <Answer title={say('answer.ready')} hands={ready.splits === 0} big={say('ready.splits', { count: ready.splits })}>
        {ready.next ? say('ready.next', { lot: lotOf(ready.next.lotId)?.name ?? '', day: figures.date(ready.next.at) }) : say('ready.noNext')}
      </Answer>
      <Answer title={say('answer.trim')} hands={false} big={trim.splits === 0 ? say('trim.none') : say('trim.splits', { count: trim.splits })}>
        {trim.splits > 0 && say('trim.cuts', { count: trim.cuts })}
      </Answer>
      <Answer title={say('answer.buy')} hands={buy?.how === 'seasoned-late'} big={buy ? say('buy.cords', { cords: figures.count(buy.cords, 2) }) : say('buy.none')}>
        {buy && say(`buy.by.${buy.how}`, { day: figures.date(buy.by) })}
      </Answer>
    </ul>
  );
}

function Answer({ title, big, hands, children }: { readonly title: string; readonly big: string; readonly hands: boolean; readonly children: ReactNode }) {
  return (
    <li>
      <span className={css['quiet']}>{title}</span>
      <strong className={`figure ${css['answer']}`}>{hands && <b className={css['now']}>▲ </b>}{big}</strong>
      <span className="figure">{children}</span>
    </li>
  );
}
