import { clockOff } from '../../live/clock-off.js';
import { lastHeard, yardNowMs } from '../../live/heard.js';
import { ageText } from '../../parts/age.js';
import { useRoundWords } from '../../words/round.js';
import css from './round.module.css';

/** Says that this phone's clock is off: what is recorded is put right by it when it is sent. On a practice night there is no clock but the yard's. */
export function ClockNotice({ practice }: { readonly practice: boolean }) {
  const say = useRoundWords();
  const off = practice || lastHeard().atMs === undefined ? undefined : clockOff(Date.now(), yardNowMs(), lastHeard().clock?.aheadS);
  if (!off) return null;
  return (
    <p className={css['soon']} role="status">
      ▲ {say(`clock.${off.way}`, { span: ageText(off.byS) })} {say(off.uncertain ? 'clock.uncertain' : 'clock.putRight')}
    </p>
  );
}
