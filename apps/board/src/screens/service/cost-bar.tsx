import type { ServiceCost } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import { useServiceWords } from '../../words/service.js';
import { partsOf } from './parts-of-cost.js';
import css from './service.module.css';

const NAMED_FROM_FRAC = 0.06;

/** The whole cost as one bar, split into lots of wood and people; wood is solid, hours are hatched. */
export function CostBar({ cost, figures }: { readonly cost: ServiceCost; readonly figures: Figures }) {
  const say = useServiceWords();
  const parts = partsOf(cost);
  if (parts.length === 0) return <p>{say('nothingYet')}</p>;
  const spoken = parts.map(({ name, cents }) => `${name} ${figures.money(cents)}`).join(', ');
  return (
    <figure className={css['bar']} role="img" aria-label={say('bar.spoken', { parts: spoken })}>
      {parts.map(({ kind, name, cents, frac }) => (
        <span key={`${kind}-${name}`} className={css[kind]} style={{ flexGrow: frac }} title={`${name}, ${figures.money(cents)}`}>
          {frac >= NAMED_FROM_FRAC && (
            <b>
              {name}
              <br />
              {figures.percent(frac)}
            </b>
          )}
        </span>
      ))}
    </figure>
  );
}
