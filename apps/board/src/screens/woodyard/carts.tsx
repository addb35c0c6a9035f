import type { YardState } from '@stokehold/domain/contract';
import { useClock } from '../../live/use-clock.js';
import { useFigures } from '../../units/use-figures.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { wantsHaul } from './stack.js';
import css from './woodyard.module.css';

/** Each pit's cart: the splits on it against those it is expected to need until the shift ends. */
export function Carts({ state }: { readonly state: YardState }) {
  const say = useWoodyardWords();
  const figures = useFigures();
  const nowMs = useClock();
  const nameOf = (id: string) => state.pits.find(({ pit }) => pit.id === id)?.pit.name;
  const lotOf = (id: string) => state.wood.lots.find((lot) => lot.id === id)?.name ?? '';
  const shown = state.wood.carts.filter(({ pitId, splits, needed }) => nameOf(pitId) !== undefined && (splits > 0 || needed > 0));
  const full = Math.max(1, ...shown.flatMap(({ splits, needed }) => [splits, needed]));
  if (shown.length === 0) return <p>{say('noCarts')}</p>;
  return (
    <ul className={css['carts']}>
      {shown.map((cart) => {
        const need = Math.ceil(cart.needed);
        const short = cart.splits < cart.needed;
        const haul = wantsHaul(cart, { nowMs, endsMs: Date.parse(state.shift?.endsAt ?? '') || nowMs });
        return (
          <li key={cart.pitId}>
            <strong className={css['strong']}>{nameOf(cart.pitId)}</strong>
            <svg viewBox="0 0 300 34" preserveAspectRatio="none" width="100%" height="34" aria-hidden="true">
              <rect x="0" y="7" width="300" height="20" rx="4" className={css['empty']} />
              <rect x="0" y="7" width={(cart.splits / full) * 296} height="20" rx="4" className={haul ? css['short'] : css['wood']} />
              <rect x={(cart.needed / full) * 296} y="1" width="4" height="32" className={css['need']} />
            </svg>
            <span className="figure">
              {haul && <strong className={css['now']}>▲ </strong>}
              {say('cart', { splits: cart.splits, needed: figures.count(need) })}
              {short && <span className={haul ? css['now'] : css['quiet']}>{say('cart.short', { count: need - cart.splits })}</span>}
            </span>
            <span className={css['quiet']}>{cart.lots.map(({ lotId, pieces }) => `${pieces} × ${lotOf(lotId)}`).join(', ')}</span>
          </li>
        );
      })}
    </ul>
  );
}
