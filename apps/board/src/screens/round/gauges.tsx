import type { PitView } from '@stokehold/domain/contract';
import { useState } from 'react';
import { Button } from '../../parts/button.js';
import { typedNumber } from '../../units/typed-number.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { useSharedWords } from '../../words/shared.js';
import { believedEnds, type Draft } from './draft.js';
import css from './round.module.css';

/** What a gauge at grate height can show, °C; the contract's limits. */
const LOW_C = -40;
const HIGH_C = 350;
const STEP = { us: 5, metric: 2 } as const;

interface GaugeProps {
  readonly label: string;
  readonly tempC: number | undefined;
  readonly believedC: number | undefined;
  readonly step: number;
  readonly onRead: (tempC: number | undefined) => void;
}

/** What stands in one gauge's box, what is wrong with it, and the two buttons beside it. */
function useGauge({ tempC, believedC, step, onRead }: Omit<GaugeProps, 'label'>) {
  const say = useRoundWords();
  const shared = useSharedWords();
  const figures = useFigures();
  const [typed, setTyped] = useState<string>();
  const start = figures.shown('temp', tempC ?? believedC ?? 120);
  const read = (shown: number) => onRead(Math.min(HIGH_C, Math.max(LOW_C, figures.si('temp', shown))));
  const inside = (shown: number) => figures.si('temp', shown) >= LOW_C && figures.si('temp', shown) <= HIGH_C;
  const number = typed === undefined ? undefined : typedNumber(typed);
  const wrong =
    typed && number === undefined
      ? shared('notANumber')
      : number !== undefined && !inside(number) && say('tempRange', { low: figures.of('temp', LOW_C), high: figures.of('temp', HIGH_C) });
  const type = (text: string) => {
    setTyped(text);
    const value = typedNumber(text);
    if (text.trim() === '') onRead(undefined);
    else if (value !== undefined && inside(value)) read(value);
  };
  const stepBy = (by: number) => {
    setTyped(undefined);
    read(tempC === undefined ? start : start + by);
  };
  return {
    wrong, type,
    shown: typed ?? (tempC === undefined ? '' : String(figures.shown('temp', tempC))),
    lower: () => stepBy(-step),
    higher: () => stepBy(step),
    leave: () => !wrong && setTyped(undefined),
  };
}

function Gauge({ label, ...gauge }: GaugeProps) {
  const say = useRoundWords();
  const figures = useFigures();
  const { wrong, shown, type, lower, higher, leave } = useGauge(gauge);
  return (
    <div>
      <div className={css['gauge']}>
        <Button className={css['step']} aria-label={say('lower', { what: label })} onClick={lower}>
          −
        </Button>
        <label>
          <span>{label}</span>
          <input
            aria-label={label}
            inputMode="decimal"
            value={shown}
            placeholder={gauge.believedC === undefined ? '–' : `≈ ${figures.bare('temp', gauge.believedC)}`}
            onChange={(event) => type(event.target.value)}
            onBlur={leave}
            aria-invalid={wrong ? true : undefined}
          />
          <span>{figures.unit('temp')}</span>
        </label>
        <Button className={css['step']} aria-label={say('higher', { what: label })} onClick={higher}>
          +
        </Button>
      </div>
      {wrong && (
        <p className={css['wrong']} role="alert">
          {wrong}
        </p>
      )}
    </div>
  );
}

interface GaugesProps {
  readonly view: PitView;
  readonly draft: Draft;
  readonly onDraft: (draft: Draft) => void;
}

/** What was read by hand at the two ends. The estimate stands there in grey: it is never sent back as if it had been read. */
export function Gauges({ view, draft, onDraft }: GaugesProps) {
  const say = useRoundWords();
  const figures = useFigures();
  const ends = believedEnds(view);
  const step = figures.unit('temp') === '°F' ? STEP.us : STEP.metric;
  const unread = draft.fireEndTempC === undefined && draft.stackEndTempC === undefined;
  return (
    <section className={css['gauges']}>
      <h2>{say('askTemps')}</h2>
      <Gauge label={say('fireEnd')} tempC={draft.fireEndTempC} believedC={ends?.fire} step={step} onRead={(fireEndTempC) => onDraft({ ...draft, fireEndTempC })} />
      <Gauge label={say('stackEnd')} tempC={draft.stackEndTempC} believedC={ends?.stack} step={step} onRead={(stackEndTempC) => onDraft({ ...draft, stackEndTempC })} />
      {unread ? (
        <p>{ends ? say('tempsHint', { fire: figures.degrees(ends.fire), stack: figures.degrees(ends.stack) }) : say('tempsHintUnknown')}</p>
      ) : (
        <Button look="bare" onClick={() => onDraft({ ...draft, fireEndTempC: undefined, stackEndTempC: undefined })}>
          {say('clear')}
        </Button>
      )}
    </section>
  );
}
