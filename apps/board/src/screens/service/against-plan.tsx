import type { ServiceCost } from '@stokehold/domain/contract';
import { Panel } from '../../parts/panel.js';
import type { Figures } from '../../units/figures.js';
import { useServiceWords } from '../../words/service.js';
import { pitLines } from './pit-lines.js';
import css from './service.module.css';

const HALF_PX = 150;

/** What the service cost beside what was planned, and what made the difference: to the right it cost more, to the left less. */
export function AgainstPlan({ cost, figures }: { readonly cost: ServiceCost; readonly figures: Figures }) {
  const say = useServiceWords();
  const { against } = cost;
  if (!against) return <Panel title={say('against')}><p>{say('against.none')}</p></Panel>;
  const most = Math.max(1, ...against.causes.map(({ cents }) => Math.abs(cents)));
  const signed = (cents: number) => `${cents > 0 ? '+' : ''}${figures.money(cents)}`;
  return (
    <Panel title={say('against')}>
      <p className="figure">{say('against.wood', { planned: figures.money(against.plannedWoodCents), actual: figures.money(cost.woodCents) })}</p>
      <p className="figure">{say('against.crew', { planned: figures.money(against.plannedCrewCents), actual: figures.money(cost.crewCents) })}</p>
      <ul className={`figure ${css['causes']}`}>
        {against.causes.map(({ cause, cents, splits }) => {
          const length = (Math.abs(cents) / most) * HALF_PX;
          return (
            <li key={cause}>
              <span>{say(`cause.${cause}`)}</span>
              <strong className={css['strong']}>{signed(cents)}</strong>
              <span className={css['quiet']}>{Math.abs(splits) >= 0.05 && say('cause.splits', { splits: `${splits > 0 ? '+' : ''}${figures.count(splits, 1)}` })}</span>
              <svg viewBox={`0 0 ${2 * HALF_PX} 22`} width={2 * HALF_PX} height="22" aria-hidden="true">
                <rect x={cents < 0 ? HALF_PX - length : HALF_PX} y="3" width={length} height="16" className={css[cents < 0 ? 'less' : 'more']} />
                <path d={`M${HALF_PX} 0V22`} className={css['axis']} />
              </svg>
            </li>
          );
        })}
      </ul>
      <ul className={css['besidePits']}>{pitLines(against.pits, say, figures).map(({ said }) => <li key={said}>{said}</li>)}</ul>
    </Panel>
  );
}
