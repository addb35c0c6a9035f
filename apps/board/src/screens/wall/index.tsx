import type { YardState } from '@stokehold/domain/contract';
import { useEffect, type CSSProperties } from 'react';
import { useClock } from '../../live/use-clock.js';
import { useConnection, useYard } from '../../live/use-yard.js';
import { Opening } from '../../parts/opening.js';
import { useWallWords } from '../../words/wall.js';
import { Lost } from './lost.js';
import { pageOf } from './pages.js';
import { wallSizes, type WallSizes } from './sizes.js';
import { stripesOf, type Stripe } from './stripe.js';
import { Stripes } from './stripes.js';
import { useWindowSize } from './use-window-size.js';
import { WallFoot } from './wall-foot.js';
import { WallHead } from './wall-head.js';
import { Quiet } from './wall-quiet.js';
import css from './wall.module.css';

/** A page of the wall stands this long before the next; by the wall's own clock, whatever speed the night runs at. */
const TURN_MS = 10_000;

const px = (sizes: WallSizes) =>
  ({
    '--large': `${sizes.large}px`,
    '--middle': `${sizes.middle}px`,
    '--small': `${sizes.small}px`,
    '--head': `${sizes.headPx}px`,
    '--foot': `${sizes.footPx}px`,
    '--stripe-least': `${sizes.stripePx}px`,
    '--stripe-gap': `${sizes.gapPx}px`,
  }) as CSSProperties;

const needsHands = (stripe: Stripe) => stripe.level !== 'quiet';

function Board({ state, nowMs }: { readonly state: YardState; readonly nowMs: number }) {
  const connection = useConnection();
  const window = useWindowSize();
  const { screenDiagonalM, viewDistanceM } = state.yard;
  const sizes = wallSizes({ screenDiagonalM, viewDistanceM, ...window });
  const turn = Math.floor(Date.now() / TURN_MS);
  const stripes = stripesOf(state, nowMs);
  const page = pageOf(stripes, needsHands, sizes.stripes, turn);
  const lost = connection.kind === 'stale';
  return (
    <div className={css['wall']} style={px(sizes)}>
      <div className={lost ? css['grey'] : css['current']} aria-hidden={lost}>
        <WallHead state={state} nowMs={nowMs} arrowPx={sizes.small} />
        {stripes.length > 0 ? <Stripes state={state} nowMs={nowMs} stripes={page.shown} sizes={sizes} widthPx={window.widthPx} /> : <Quiet state={state} />}
        <WallFoot state={state} turn={turn} page={page} sizes={sizes} />
      </div>
      {lost && <Lost ageS={connection.ageS} />}
    </div>
  );
}

/** The wall board: read from across the yard, in the dark; nothing on it is touched. */
export function WallScreen() {
  const say = useWallWords();
  const state = useYard();
  const nowMs = useClock();
  const connection = useConnection();
  const title = say('title');
  useEffect(() => {
    document.title = `${title} · Stokehold`;
  }, [title]);
  if (!state) return <Opening away={connection.kind === 'stale'} />;
  return <Board state={state} nowMs={nowMs} />;
}
