import type { YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useMay } from '../../live/use-setup.js';
import { useWoodyard } from '../../live/use-woodyard.js';
import { useYard } from '../../live/use-yard.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { Opening } from '../../parts/opening.js';
import { Panel } from '../../parts/panel.js';
import { Sheet } from '../../parts/sheet.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { BuyForm } from './buy-form.js';
import { Carts } from './carts.js';
import { ClimateForm } from './climate-form.js';
import { Drying } from './drying.js';
import { FourAnswers } from './four-answers.js';
import { LotRow } from './lot-row.js';
import { OffcutsPanel } from './offcuts-panel.js';
import { PullPanel } from './pull-panel.js';
import { lotsInOrder } from './stack.js';
import { TrimAndBuy } from './trim-and-buy.js';
import css from './woodyard.module.css';

/** What wood is there, how dry, where it lies, what it fits, and whether it lasts the night. */
export function WoodyardScreen() {
  const say = useWoodyardWords();
  const state = useYard();
  const mayPlan = useMay('plan');
  const { view, opening } = useWoodyard(state);
  const [buying, setBuying] = useState(false);
  const [climate, setClimate] = useState(false);
  if (!state || opening) return <Opening />;
  const most = Math.max(1, ...state.wood.lots.map(({ inStack }) => inStack));
  return (
    <Sheet title={say('title')}>
      {view && <FourAnswers view={view} state={state} />}
      <Enough state={state} />
      {view && <PullPanel view={view} state={state} />}
      <Panel title={say('carts')}>
        <Carts state={state} />
      </Panel>
      {view && <TrimAndBuy view={view} state={state} />}
      <OffcutsPanel state={state} />
      {view && (
        <Panel title={say('drying')} beside={mayPlan && !climate && <Button onClick={() => setClimate(true)}>{say('climate.edit')}</Button>}>
          {climate && <ClimateForm months={view.climate} state={state} onDone={() => setClimate(false)} />}
          <Drying view={view} state={state} />
        </Panel>
      )}
      <Panel title={say('lots')} beside={mayPlan && !buying && <Button onClick={() => setBuying(true)}>{say('buy')}</Button>}>
        {buying && <BuyForm state={state} onDone={() => setBuying(false)} />}
        {state.wood.lots.length === 0 && <p>{say('noLots')}</p>}
        <ul className={css['lots']}>
          {lotsInOrder(state.wood.lots).map((lot) => (
            <LotRow key={lot.id} {...{ lot, state, most }} />
          ))}
        </ul>
        <Caution about="saw" />
        <p className={css['quiet']}>{say('stackCaution')}</p>
      </Panel>
    </Sheet>
  );
}

/** The yard's one line: what is left against what the burning pits need until their shift ends. */
function Enough({ state }: { readonly state: YardState }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const { splitsLeft, splitsNeeded } = state.wood;
  const short = splitsLeft < splitsNeeded;
  const full = Math.max(splitsLeft, splitsNeeded, 1);
  return (
    <div className={css['enough']}>
      <svg viewBox="0 0 1000 56" preserveAspectRatio="none" width="100%" height="56" role="img" aria-label={say('enough.spoken', { left: splitsLeft, needed: figures.count(Math.ceil(splitsNeeded)) })}>
        <rect x="0" y="10" width="1000" height="36" rx="6" className={css['empty']} />
        <rect x="0" y="10" width={(splitsLeft / full) * 1000} height="36" rx="6" className={short ? css['short'] : css['wood']} />
        <rect x={Math.min(994, (splitsNeeded / full) * 1000)} y="2" width="6" height="52" className={css['need']} />
      </svg>
      <p className={`figure ${css['big']}`}>
        {short && <strong className={css['now']}>▲ </strong>}
        {say('enough', { left: splitsLeft, needed: figures.count(Math.ceil(splitsNeeded)) })}{' '}
        {short && <strong className={css['now']}>{say('enough.short', { count: Math.ceil(splitsNeeded - splitsLeft) })}</strong>}
      </p>
    </div>
  );
}
