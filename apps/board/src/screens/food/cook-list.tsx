import type { CookView } from '@stokehold/domain/contract';
import { Link } from 'wouter';
import { CutShape } from '../../parts/cut-shape.js';
import { Panel } from '../../parts/panel.js';
import { useFigures } from '../../units/use-figures.js';
import { useFoodWords } from '../../words/food.js';
import css from './food.module.css';
import { cooksInOrder, doneSaid } from './food-said.js';

/** All cooks, the soonest done on top, each a way to its page. */
export function CookList({ cooks, shown }: { readonly cooks: readonly CookView[]; readonly shown: string | undefined }) {
  const say = useFoodWords();
  const figures = useFigures();
  const when = (cook: CookView) => {
    if (cook.offAt !== null) return say('list.off', { time: figures.dayTime(cook.offAt) });
    if (cook.forecast) return doneSaid(say, figures, cook.forecast);
    return cook.onAt === null ? say('list.waiting') : '';
  };
  return (
    <Panel title={say('cooks')}>
      {cooks.length === 0 && <p>{say('none')}</p>}
      <ul className={css['rows']}>
        {cooksInOrder(cooks).map((cook) => (
          <li key={cook.id}>
            <Link className={css['row']} href={`/food/${cook.id}`} aria-current={cook.id === shown ? 'true' : undefined}>
              <svg width="44" height="30" aria-hidden="true">
                <CutShape shape={cook.shape} x={2} y={2} width={40} height={26} />
              </svg>
              <span>
                <strong>{say('list.named', { cut: cook.cut, count: cook.pieces })}</strong> <span className="figure">{figures.of('mass', cook.weightKg)}</span>
                <br />
                {when(cook)}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
