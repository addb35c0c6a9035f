import type { YardState } from '@stokehold/domain/contract';
import { Link } from 'wouter';
import { useMe } from '../../live/use-me.js';
import { PitDrawing, type LiesInZone } from '../../parts/pit-drawing.js';
import { ribbonShape } from '../../parts/ribbon-shape.js';
import { Ribbon } from '../../parts/ribbon.js';
import { useFigures } from '../../units/use-figures.js';
import { useWallWords } from '../../words/wall.js';
import { fitNamePx } from './fit-name.js';
import { WHICH_EM, WHO_EM, type WallSizes } from './sizes.js';
import type { Level, Stripe } from './stripe.js';
import { whatWords } from './wall-words.js';
import css from './wall.module.css';

const NEXT: Readonly<Record<Level, string>> = { quiet: 'var(--strong)', soon: 'var(--soon)', now: 'var(--now)', grave: 'var(--now)' };
/** Of the width left for pictures the pit takes so much, the ribbon the rest. */
const PIT_FRAC = 0.5;
const MOST_WORDS_MIN = 99;

/** What lies where on one pit, of all cooks that are on and not off. */
export function liesOn(state: Pick<YardState, 'cooks'>, pitId: string): readonly LiesInZone[] {
  return state.cooks
    .filter((cook) => cook.offAt === null)
    .flatMap((cook) => cook.lies.filter((lies) => lies.pitId === pitId).map((lies) => ({ zone: lies.zone, shape: cook.shape, pieces: lies.pieces })));
}

function Minutes({ stripe, blinks }: { readonly stripe: Stripe; readonly blinks: boolean }) {
  const say = useWallWords();
  const { minutes, late } = stripe;
  const shown = minutes === null ? '–' : minutes > MOST_WORDS_MIN ? `${Math.floor(minutes / 60)} h` : minutes;
  return (
    <div className={css['minutes']}>
      {(late || stripe.level === 'grave') && (
        <svg className={blinks ? css['blinks'] : undefined} viewBox="0 0 40 62" aria-hidden="true">
          <path d="M20 4 39 58H1Z" fill="currentColor" />
        </svg>
      )}
      <span aria-hidden="true">{shown}</span>
      {minutes !== null && <span className="unseen">{late ? say('aria.lateMinutes', { count: minutes }) : say('aria.inMinutes', { count: minutes })}</span>}
    </div>
  );
}

/** A name stands large when hands are needed now, and gives way to the minutes beside it. */
function nameSize({ view, level, late, minutes }: Stripe, { large, middle }: WallSizes): number {
  const urgent = level === 'now' || level === 'grave';
  const minutesEm = 0.52 * Math.max(1, Math.min(2, String(minutes ?? 0).length)) + (late || urgent ? 0.5 : 0.12);
  return fitNamePx({ name: view.pit.name, roomPx: (WHICH_EM - minutesEm) * large, wantedPx: urgent ? large : large * 0.79, leastPx: middle });
}

/** One person stands as large as the temperature beside; two give way, never under what can be read. */
const whoSize = (people: string, { large, middle, small }: WallSizes): number => fitNamePx({ name: people, roomPx: WHO_EM * large, wantedPx: middle, leastPx: small });

function Pictures({ stripe, state, nowMs, sizes }: Omit<StripeRowProps, 'names' | 'blinks'>) {
  const say = useWallWords();
  const { view, lit } = stripe;
  const height = sizes.pictureHighPx;
  const width = Math.max(80, Math.floor(sizes.picturePx * (1 - PIT_FRAC)));
  const band = view.tonight?.band ?? view.pit.band;
  const tasksAt = state.tasks.filter((task) => task.pitId === view.pit.id && task.doneAt === null).map((task) => task.dueAt);
  return (
    <>
      <div className={css['pit']} style={{ width: sizes.picturePx * PIT_FRAC - 24, height }}>
        <PitDrawing
          pit={view.pit}
          lies={liesOn(state, view.pit.id)}
          bedFrac={view.fire && lit ? view.fire.bedKg / Math.max(view.fire.fullBedKg, 0.01) : null}
          lit={lit}
          title={say('aria.pit')}
        />
      </div>
      <Ribbon
        shape={ribbonShape({ view, band, tasksAt, nowMs, width, height })}
        width={width}
        height={height}
        next={NEXT[stripe.level]}
        title={say('aria.ribbon')}
      />
    </>
  );
}

interface StripeRowProps {
  readonly stripe: Stripe;
  readonly state: YardState;
  readonly nowMs: number;
  readonly names: ReadonlyMap<string, string>;
  readonly sizes: WallSizes;
  readonly blinks: boolean;
}

/** One fire: which, when, who and what, how hot, the pit from its side, and its ribbon of time. */
export function StripeRow({ names, blinks, ...rest }: StripeRowProps) {
  const say = useWallWords();
  const figures = useFigures();
  const { me } = useMe();
  const { stripe } = rest;
  const { view, level } = stripe;
  const people = stripe.people.map((id) => names.get(id) ?? '').join(' + ');
  const what = whatWords(stripe.what, say, figures);
  const tempC = view.fire?.chamberTempC.p50 ?? view.past.at(-1)?.tempC;
  return (
    <li className={`${css['stripe']} ${css[level]} figure`} data-row={view.pit.id} data-level={level}>
      <div className={css['which']}>
        <h2 className={css['name']} style={{ fontSize: nameSize(stripe, rest.sizes) }}>
          {me?.device.kind === 'hand' ? <Link href={`/pit/${view.pit.id}`}>{view.pit.name}</Link> : view.pit.name}
        </h2>
        <Minutes stripe={stripe} blinks={blinks} />
      </div>
      <div className={css['who']}>
        {(people || level !== 'quiet') && <span style={{ fontSize: whoSize(people || say('nobody'), rest.sizes) }}>{people || say('nobody')}</span>}
        {what && <strong>{what}</strong>}
      </div>
      <div className={css['temp']}>
        {tempC === undefined ? <span className={css['quiet']}>–</span> : stripe.lit && <span className={stripe.unprobed ? css['reckoned'] : undefined}>{figures.degrees(tempC)}</span>}
        {stripe.unprobed && <span className="unseen">{say('aria.reckoned')}</span>}
      </div>
      <Pictures {...rest} />
    </li>
  );
}
