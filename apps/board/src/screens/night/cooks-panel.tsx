import type { CookView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { useMay } from '../../live/use-setup.js';
import { Button } from '../../parts/button.js';
import { Caution } from '../../parts/caution.js';
import { CutShape } from '../../parts/cut-shape.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import { CookForm } from './cook-form.js';
import css from './night.module.css';
import { PlaceForm } from './place-form.js';
import { TakeOffForm } from './take-off-form.js';

interface CooksPanelProps {
  readonly state: YardState;
  /** Only the cooks of this pit, if one was chosen in the picture. */
  readonly pitId: string | null;
}
type Doing = { readonly what: 'change' | 'place' | 'off'; readonly cookId: string } | { readonly what: 'add' };

/** The cooks of the night: what they are, where they lie, when they come off. */
export function CooksPanel({ state, pitId }: CooksPanelProps) {
  const say = useNightWords();
  const mayPlan = useMay('plan');
  const [doing, setDoing] = useState<Doing>();
  const close = () => setDoing(undefined);
  const chosen = doing && doing.what !== 'add' ? state.cooks.find(({ id }) => id === doing.cookId) : undefined;
  const shown = state.cooks.filter(({ lies }) => pitId === null || lies.some((lie) => lie.pitId === pitId));
  const pit = state.pits.find((view) => view.pit.id === pitId)?.pit.name;
  return (
    <>
      <Panel
        title={pit ? say('cooks.titleOn', { pit }) : say('cooks.title')}
        beside={mayPlan && <Button onClick={() => setDoing({ what: 'add' })}>{say('cooks.add')}</Button>}
      >
        {shown.length === 0 && <p>{say('cooks.none')}</p>}
        <ul className={css['rows']}>
          {shown.map((cook) => (
            <CookRow key={cook.id} {...{ cook, state, mayPlan }} onDo={(what) => setDoing({ what, cookId: cook.id })} />
          ))}
        </ul>
        <Caution about="food" />
      </Panel>
      {doing?.what === 'add' && <CookForm key="new" state={state} cook={undefined} onDone={close} />}
      {doing?.what === 'change' && chosen && <CookForm key={chosen.id} state={state} cook={chosen} onDone={close} />}
      {doing?.what === 'place' && chosen && <PlaceForm key={chosen.id} state={state} cook={chosen} onDone={close} />}
      {doing?.what === 'off' && chosen && <TakeOffForm key={chosen.id} state={state} cook={chosen} onDone={close} />}
    </>
  );
}

interface CookRowProps {
  readonly cook: CookView;
  readonly state: YardState;
  readonly mayPlan: boolean;
  readonly onDo: (what: 'change' | 'place' | 'off') => void;
}

function CookRow({ cook, state, mayPlan, onDo }: CookRowProps) {
  const say = useNightWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const service = state.services.find(({ id }) => id === cook.serviceId);
  const lying = whereItLies(cook, state);
  const off = cook.offAt !== null;
  const wished = ({ species, leastFrac, mostFrac }: CookView['mix'][number]) =>
    say(mostFrac === 1 ? 'mix.atLeast' : leastFrac === 0 ? 'mix.atMost' : 'mix.between', { wood: shared(`species.${species}`), least: figures.percent(leastFrac), most: figures.percent(mostFrac) });
  return (
    <li>
      <div className={css['line']}>
        <span className={css['cut']}>
          <svg width="44" height="30" aria-hidden="true">
            <CutShape shape={cook.shape} x={2} y={2} width={40} height={26} />
          </svg>
          <span>
            <strong className={css['big']}>{say('cook.named', { cut: cook.cut, count: cook.pieces })}</strong>{' '}
            <span className="figure">{figures.of('mass', cook.weightKg)}</span>
            <br />
            <span className={css['quiet']}>
              {[service && say('cooks.for', { service: service.name }), cook.offAt ? say('cook.wasOff', { time: figures.time(cook.offAt) }) : cook.comesOffAt && say('cook.off', { time: figures.dayTime(cook.comesOffAt) }), ...(off ? [] : cook.mix.map(wished))]
                .filter(Boolean)
                .join(' · ')}
            </span>
          </span>
        </span>
        {!off && (
          <span className={css['line']}>
            <Button onClick={() => onDo('place')}>{say('cooks.place')}</Button>
            {cook.lies.length > 0 && <Button onClick={() => onDo('off')}>{say('cooks.takeOff')}</Button>}
            {mayPlan && <Button onClick={() => onDo('change')}>{shared('do.change')}</Button>}
          </span>
        )}
      </div>
      {!off && (
        <p className={lying.length === 0 ? css['quiet'] : undefined}>
          {lying.length === 0
            ? say('cooks.liesNowhere')
            : lying.map(({ pit, zones }) => `${pit}: ${zones.map(({ zone, pieces }) => say('cooks.inZone', { count: pieces, zone: zone + 1 })).join(', ')}`).join(' · ')}
        </p>
      )}
      {off && cook.yieldKg !== null && <p>{say('cooks.yield', { mass: figures.of('mass', cook.yieldKg), percent: figures.percent(cook.yieldKg / cook.weightKg) })}</p>}
    </li>
  );
}

function whereItLies(cook: CookView, state: YardState): readonly { readonly pit: string; readonly zones: readonly { readonly zone: number; readonly pieces: number }[] }[] {
  return state.pits.flatMap(({ pit }) => {
    const zones = cook.lies.filter(({ pitId }) => pitId === pit.id).sort((a, b) => a.zone - b.zone);
    return zones.length > 0 ? [{ pit: pit.name, zones }] : [];
  });
}
