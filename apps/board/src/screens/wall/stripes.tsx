import type { YardState } from '@stokehold/domain/contract';
import { useRef } from 'react';
import { calledNames } from './called.js';
import type { WallSizes } from './sizes.js';
import type { Stripe } from './stripe.js';
import { StripeRow } from './stripe-row.js';
import { useSlides } from './use-slides.js';
import css from './wall.module.css';

interface StripesProps {
  readonly state: YardState;
  readonly nowMs: number;
  readonly stripes: readonly Stripe[];
  readonly sizes: WallSizes;
}

/** The fires, the most urgent on top. Of several grave ones only the topmost blinks. */
export function Stripes({ state, nowMs, stripes, sizes }: StripesProps) {
  const rows = useRef<HTMLOListElement>(null);
  useSlides(rows, stripes.map((stripe) => stripe.view.pit.id).join());
  const names = calledNames(state.people);
  const blinks = stripes.find((stripe) => stripe.level === 'grave' && stripe.unacknowledged);
  return (
    <main className={css['stripes']}>
      <ol ref={rows}>
        {stripes.map((stripe) => (
          <StripeRow
            key={stripe.view.pit.id}
            stripe={stripe}
            state={state}
            nowMs={nowMs}
            names={names}
            sizes={sizes}
            blinks={stripe === blinks}
          />
        ))}
      </ol>
    </main>
  );
}
