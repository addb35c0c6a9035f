import { useYard } from '../../live/use-yard.js';
import { useClock } from '../../live/use-clock.js';
import { Button } from '../../parts/button.js';
import { Opening } from '../../parts/opening.js';
import { Sheet } from '../../parts/sheet.js';
import { usePrintWords } from '../../words/print.js';
import { LoadingPage } from './loading-page.js';
import { PlanPage } from './plan-page.js';
import css from './print.module.css';
import { TrimPage } from './trim-page.js';

const MINUTE_MS = 60_000;

/** The three sheets for the yard's wall, as they will look on paper. */
export function PrintScreen() {
  const say = usePrintWords();
  const state = useYard();
  const nowMs = Math.floor(useClock() / MINUTE_MS) * MINUTE_MS;
  if (!state) return <Opening />;
  return (
    <Sheet wide title={say('title')} beside={<Button look="main" onClick={() => print()}>{say('print')}</Button>}>
      <p className={css['how']}>{say('how')}</p>
      <div className={css['pages']} role="group" aria-label={say('title')} tabIndex={0}>
        <PlanPage {...{ state, nowMs }} />
        <TrimPage {...{ state, nowMs }} />
        <LoadingPage {...{ state, nowMs }} />
      </div>
    </Sheet>
  );
}
