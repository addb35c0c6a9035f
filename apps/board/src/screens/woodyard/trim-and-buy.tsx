import type { WoodyardView, YardState } from '@stokehold/domain/contract';
import { epochS, toIso } from '@stokehold/domain/quantity';
import { yardNowMs } from '../../live/heard.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Panel } from '../../parts/panel.js';
import { savePaper } from '../../parts/paper.js';
import { useFigures } from '../../units/use-figures.js';
import { useSharedWords } from '../../words/shared.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import css from './forecast.module.css';
import { TrimLine } from './trim-line.js';
import { trimPaper } from './trim-paper.js';

/** What to trim for tonight, and what to buy for the weeks that are planned. */
export function TrimAndBuy({ view, state }: { readonly view: WoodyardView; readonly state: YardState }) {
  const say = useWoodyardWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const lotName = (id: string) => state.wood.lots.find((lot) => lot.id === id)?.name ?? '';
  const pitName = (id: string) => state.pits.find(({ pit }) => pit.id === id)?.pit.name ?? '';
  return (
    <div className={css['pair']}>
      <Panel title={say('answer.trim')}>
        {view.maySaw?.length === 0 && <p className={css['now']}>▲ {say('trim.nobody')}</p>}
        {view.maySaw && view.maySaw.length > 0 && view.trim.length > 0 && <p>{say('trim.maySaw', { people: view.maySaw.join(', ') })}</p>}
        {view.trim.length === 0 && <p>{say('trim.nothing')}</p>}
        <ul className={css['plain']}>
          {view.trim.map((line) => (
            <TrimLine key={`${line.pitId} ${line.lotId}`} {...{ line, state }} lot={lotName(line.lotId)} pit={pitName(line.pitId)} />
          ))}
        </ul>
        {view.trim.length > 0 && (
          <>
            <p className={css['deeds']}>
              <Button onClick={() => void savePaper('trim.pdf', trimPaper(view.trim, toIso(epochS(yardNowMs() / 1000)), { lot: lotName, pit: pitName }, { say, caution: shared('caution.saw'), figures }))}>{say('trim.pdf')}</Button>
            </p>
            <Caution about="saw" />
          </>
        )}
      </Panel>
      <Panel title={say('answer.buy')}>
        {view.purchases.length === 0 && <p>{say('buy.nothing')}</p>}
        <ul className={css['plain']}>
          {view.purchases.map(({ neededBy, cords, how, orderSeasonedBy, orderGreenBy }) => (
            <li key={neededBy} className="figure">
              <strong className={css['strong']}>{say('buy.cords', { cords: figures.count(cords, 2) })}</strong> {say('buy.neededBy', { day: figures.date(neededBy) })}{' '}
              {say(`buy.by.${how}`, { day: figures.date(how === 'green' && orderGreenBy ? orderGreenBy : orderSeasonedBy) })}
            </li>
          ))}
        </ul>
      </Panel>
    </div>
  );
}
