import type { YardState } from '@stokehold/domain/contract';
import { memo, useEffect, type CSSProperties } from 'react';
import { useAwake } from '../../live/use-awake.js';
import { useClock } from '../../live/use-clock.js';
import { useConnection, useYard } from '../../live/use-yard.js';
import { callsNow } from '../../parts/alarms-said.js';
import { useCallOut } from '../../parts/call-out.js';
import { Opening } from '../../parts/opening.js';
import { useTheme } from '../../parts/use-theme.js';
import { useWallWords } from '../../words/wall.js';
import { burnInShift } from './burn-in.js';
import { Lost } from './lost.js';
import { pageOf } from './pages.js';
import { TEMP_EM, wallSizes, type WallSizes, WHICH_EM, WHO_EM } from './sizes.js';
import { stripesOf, type Stripe } from './stripe.js';
import { Stripes } from './stripes.js';
import { useWindowSize } from './use-window-size.js';
import { WallFoot } from './wall-foot.js';
import { WallHead } from './wall-head.js';
import { Quiet } from './wall-quiet.js';
import css from './wall.module.css';

/** A page of the wall stands this long before the next; by the wall's own clock, whatever speed the night runs at. */
const TURN_MS = 10_000;
/** Minutes are what a wall shows: it looks at its clock so often, by its own time. */
const LOOK_EVERY_MS = 2000;

const px = (sizes: WallSizes) =>
  ({
    '--large': `${sizes.large}px`,
    '--middle': `${sizes.middle}px`,
    '--small': `${sizes.small}px`,
    '--head': `${sizes.headPx}px`,
    '--foot': `${sizes.footPx}px`,
    '--which': `${WHICH_EM * sizes.large}px`,
    '--who': `${WHO_EM * sizes.large}px`,
    '--temp': `${TEMP_EM * sizes.large}px`,
    '--stripe-least': `${sizes.stripePx}px`,
    '--stripe-gap': `${sizes.gapPx}px`,
  }) as CSSProperties;

const needsHands = (stripe: Stripe) => stripe.level !== 'quiet';

interface BoardProps {
  readonly state: YardState;
  readonly nowMs: number;
  /** How old what is shown is, once the server is lost. */
  readonly lostS: number | undefined;
}

/** Drawn anew when the state changes and at each look of its clock, not each second. */
const Board = memo(function Board({ state, nowMs, lostS }: BoardProps) {
  const window = useWindowSize();
  const { screenDiagonalM, viewDistanceM } = state.yard;
  const sizes = wallSizes({ screenDiagonalM, viewDistanceM, ...window });
  const turn = Math.floor(Date.now() / TURN_MS);
  const stripes = stripesOf(state, nowMs);
  const page = pageOf(stripes, needsHands, sizes.stripes, turn);
  const lost = lostS !== undefined;
  const { xPx, yPx } = burnInShift(Date.now());
  const called = state.alarms.find((alarm) => callsNow(alarm) && alarm.priority !== 'low');
  useCallOut(called && { id: called.id, calls: 'past' });
  return (
    <div className={css['wall']} style={px(sizes)}>
      <div className={lost ? css['grey'] : css['current']} style={{ translate: `${xPx}px ${yPx}px` }} aria-hidden={lost}>
        <WallHead state={state} nowMs={nowMs} arrowPx={sizes.small} />
        {stripes.length > 0 ? <Stripes state={state} nowMs={nowMs} stripes={page.shown} sizes={sizes} /> : <Quiet state={state} />}
        <WallFoot state={state} turn={turn} page={page} sizes={sizes} />
      </div>
      {lost && <Lost ageS={lostS} />}
    </div>
  );
});

/** The wall board: read from across the yard, in the dark; nothing on it is touched. */
export function WallScreen() {
  useAwake();
  useTheme();
  const say = useWallWords();
  const state = useYard();
  const nowMs = useClock(LOOK_EVERY_MS);
  const connection = useConnection();
  const title = say('title');
  useEffect(() => {
    document.title = `${title} · Stokehold`;
  }, [title]);
  if (!state) return <Opening away={connection.kind === 'stale'} />;
  return <Board state={state} nowMs={nowMs} lostS={connection.kind === 'stale' ? connection.ageS : undefined} />;
}
