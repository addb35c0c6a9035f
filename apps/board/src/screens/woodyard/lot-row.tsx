import type { LotView, YardState } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { useFigures } from '../../units/use-figures.js';
import { useSharedWords } from '../../words/shared.js';
import { useWoodyardWords } from '../../words/woodyard.js';
import { MeasureForm, MoveForm, RecountForm } from './lot-forms.js';
import { drynessOf, fitOf, stackOf, stackSize } from './stack.js';
import css from './woodyard.module.css';

const END_PX = 15;
type Doing = 'pull' | 'bring-back' | 'recount' | 'measure';

interface LotRowProps {
  readonly lot: LotView;
  readonly state: YardState;
  /** Pieces in the fullest stack of the yard: what a full drawing stands for. */
  readonly most: number;
}

/** One lot: its stack, how dry it is, where it lies, what it fits; and what can be done with it. */
export function LotRow({ lot, state, most }: LotRowProps) {
  const say = useWoodyardWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [doing, setDoing] = useState<Doing>();
  const dryness = drynessOf(lot.moisture);
  const close = () => setDoing(undefined);
  return (
    <li className={css['lot']} aria-label={lot.name}>
      <Stack lot={lot} most={most} />
      <div className={css['facts']}>
        <h3>{lot.name}</h3>
        <p>
          {shared(`species.${lot.species}`)}, {say('size', { length: figures.of('length', lot.lengthM), thickness: figures.of('length', lot.thicknessM) })}
        </p>
        <p>
          <strong className={dryness === 'wet' || dryness === 'green' ? css['soon'] : css['strong']}>{say(`dryness.${dryness}`)},</strong>{' '}
          <span className="figure">{say('moisture', { percent: figures.percent(lot.moisture) })}</span>
        </p>
        <p className="figure">{say('where', { stack: lot.inStack, carts: lot.onCarts, burned: lot.burned })}</p>
        <p className={css['quiet']}>{say('piece', { mass: figures.of('mass', lot.pieceKg), heat: figures.of('heat', lot.pieceHeatJ), money: figures.money(lot.pieceCostCents) })}</p>
      </div>
      <Fits lot={lot} state={state} />
      <div className={css['deeds']} role="group" aria-label={lot.name}>
        {(['pull', 'bring-back', 'recount', 'measure'] as const).map((deed) => (
          <Button key={deed} aria-expanded={doing === deed} disabled={(deed === 'pull' && lot.inStack === 0) || (deed === 'bring-back' && lot.onCarts === 0)} onClick={() => setDoing(doing === deed ? undefined : deed)}>
            {say(`do.${deed}`)}
          </Button>
        ))}
      </div>
      {doing && (
        <div className={css['doing']}>
          {(doing === 'pull' || doing === 'bring-back') && <MoveForm key={doing} way={doing} {...{ lot, state }} onDone={close} />}
          {doing === 'recount' && <RecountForm {...{ lot, state }} onDone={close} />}
          {doing === 'measure' && <MeasureForm {...{ lot, state }} onDone={close} />}
        </div>
      )}
    </li>
  );
}

/** Ends of splits, piled; wet wood has dark hearts, green wood is outlined only. */
function Stack({ lot, most }: { readonly lot: LotView; readonly most: number }) {
  const say = useWoodyardWords();
  const dryness = drynessOf(lot.moisture);
  const { width, height } = stackSize(END_PX);
  return (
    <svg className={css['stack']} viewBox={`0 0 ${width} ${height + 4}`} width={width} height={height + 4} role="img" aria-label={say('stack.spoken', { count: lot.inStack })}>
      <path d={`M0 ${height + 2}H${width}`} className={css['ground']} />
      {stackOf(lot.inStack, most, END_PX).map(({ x, y }) => (
        <g key={`${x}-${y}`} className={css[dryness]}>
          <circle cx={x + END_PX / 2} cy={y + END_PX / 2} r={END_PX / 2 - 1} />
          {dryness !== 'dry' && <circle className={css['heart']} cx={x + END_PX / 2} cy={y + END_PX / 2} r={dryness === 'fair' ? 2 : 4} />}
        </g>
      ))}
    </svg>
  );
}

function Fits({ lot, state }: { readonly lot: LotView; readonly state: YardState }) {
  const say = useWoodyardWords();
  const fit = fitOf(lot, (id) => state.pits.find(({ pit }) => pit.id === id && !pit.retired)?.pit.name);
  return (
    <dl className={css['fits']}>
      {fit.across.length > 0 && (
        <div>
          <dt><FitMark lies="across" /> {say('fits.across')}</dt>
          <dd>{fit.across.join(', ')}</dd>
        </div>
      )}
      {fit.lengthwise.length > 0 && (
        <div>
          <dt><FitMark lies="lengthwise" /> {say('fits.lengthwise')}</dt>
          <dd>{fit.lengthwise.join(', ')}</dd>
        </div>
      )}
      {fit.tooLong.length > 0 && (
        <div className={css['soon']}>
          <dt><FitMark lies="too-long" /> {say('fits.tooLong')}</dt>
          <dd>{fit.tooLong.join(', ')}</dd>
        </div>
      )}
    </dl>
  );
}

/** A firebox from above, its door below: the split across it, along it, or sticking out. */
function FitMark({ lies }: { readonly lies: 'across' | 'lengthwise' | 'too-long' }) {
  const split = lies === 'across' ? { x: 7, y: 15, width: 16, height: 5 } : lies === 'lengthwise' ? { x: 12.5, y: 5, width: 5, height: 20 } : { x: 12.5, y: 0, width: 5, height: 30 };
  return (
    <svg width="30" height="30" className={css['fitMark']} aria-hidden="true">
      <path d="M4 27V3H26V27M4 27h6M20 27h6" fill="none" stroke="currentColor" strokeWidth="2" />
      <rect {...split} rx="2" fill="var(--wood)" />
    </svg>
  );
}
