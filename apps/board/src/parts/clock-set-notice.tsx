import { lastHeard } from '../live/heard.js';
import { useTick } from '../live/use-clock.js';
import { useSharedWords } from '../words/shared.js';
import { ageText } from './age.js';
import css from './connection-notice.module.css';

/** Says that the server's clock was set while the night ran, and why other clocks show another time than this screen. */
export function ClockSetNotice() {
  const say = useSharedWords();
  useTick();
  const aheadS = lastHeard().clock?.aheadS ?? 0;
  if (aheadS === 0) return null;
  return (
    <p className={css['unsent']} role="status">
      ▲ {say(aheadS > 0 ? 'clock.ahead' : 'clock.back', { span: ageText(Math.abs(aheadS)) })}
    </p>
  );
}
