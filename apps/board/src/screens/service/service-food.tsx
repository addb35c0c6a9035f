import type { CookView, YardState } from '@stokehold/domain/contract';
import { CutShape } from '../../parts/cut-shape.js';
import { PitDrawing } from '../../parts/pit-drawing.js';
import { useFigures } from '../../units/use-figures.js';
import { useServiceWords } from '../../words/service.js';
import css from './service.module.css';

interface ServiceFoodProps {
  readonly state: YardState;
  readonly cooks: readonly CookView[];
  readonly readyBy: string;
}

/** The cooks of a service and the pits they lie on, with nothing else on them drawn. */
export function ServiceFood({ state, cooks, readyBy }: ServiceFoodProps) {
  const say = useServiceWords();
  if (cooks.length === 0) return <p>{say('noCooks')}</p>;
  const lying = cooks.filter(({ offAt }) => offAt === null);
  const pits = state.pits.filter(({ pit }) => lying.some(({ lies }) => lies.some(({ pitId }) => pitId === pit.id)));
  return (
    <div className={css['pair']}>
      <ul className={css['cooks']}>
        {cooks.map((cook) => (
          <CookRow key={cook.id} {...{ cook, state, readyBy }} />
        ))}
      </ul>
      <div className={css['pits']}>
        {pits.map(({ pit, fire }) => (
          <figure key={pit.id}>
            <PitDrawing
              pit={pit} bedFrac={fire ? fire.bedKg / fire.fullBedKg : null} lit={fire !== null && fire.mode !== 'out'}
              lies={lying.flatMap(({ shape, lies }) => lies.filter(({ pitId }) => pitId === pit.id).map(({ zone, pieces }) => ({ zone, pieces, shape })))}
            />
            <figcaption>{pit.name}</figcaption>
          </figure>
        ))}
      </div>
    </div>
  );
}

function CookRow({ cook, state, readyBy }: { readonly cook: CookView; readonly state: YardState; readonly readyBy: string }) {
  const say = useServiceWords();
  const figures = useFigures();
  const pits = state.pits.filter(({ pit }) => cook.lies.some(({ pitId }) => pitId === pit.id)).map(({ pit }) => pit.name);
  const late = cook.offAt === null && cook.comesOffAt !== null && cook.comesOffAt > readyBy;
  return (
    <li>
      <svg width="44" height="30" aria-hidden="true">
        <CutShape shape={cook.shape} x={2} y={2} width={40} height={26} />
      </svg>
      <span>
        <strong className={css['strong']}>{cook.pieces} × {cook.cut}</strong> <span className="figure">{figures.of('mass', cook.weightKg)}</span>
        <br />
        <span className={css['quiet']}>
          {cook.offAt !== null
            ? say('cameOff', { time: figures.dayTime(cook.offAt) })
            : [pits.length > 0 ? say('liesOn', { pits: pits.join(', ') }) : say('liesNowhere'), cook.comesOffAt && say('comesOff', { time: figures.dayTime(cook.comesOffAt) })].filter(Boolean).join(' · ')}
          {cook.yieldKg !== null && ` · ${say('yield', { mass: figures.of('mass', cook.yieldKg), percent: figures.percent(cook.yieldKg / cook.weightKg) })}`}
        </span>
        {late && <strong className={css['soon']}> ▲ {say('tooLate')}</strong>}
      </span>
    </li>
  );
}
