import { useEffect, useState } from 'react';
import { useClock } from '../live/use-clock.js';
import { useYard } from '../live/use-yard.js';
import { keepByHand, keptByHand, shine, themeAt, type Theme } from './theme.js';

const MINUTE_MS = 60_000;
const LOOK_EVERY_MS = 5000;

/** The light of this board, by the yard's sun and the yard's clock or by hand; and one touch to change it. */
export function useTheme(): { readonly theme: Theme; readonly turn: () => void } {
  const place = useYard()?.yard.place;
  const nowMs = Math.floor(useClock(LOOK_EVERY_MS) / MINUTE_MS) * MINUTE_MS;
  const [byHand, setByHand] = useState(keptByHand);
  const theme = themeAt(nowMs, place, byHand);
  useEffect(() => shine(theme), [theme]);
  const turn = () => {
    keepByHand(theme === 'night' ? 'day' : 'night', nowMs, place);
    setByHand(keptByHand());
  };
  return { theme, turn };
}
