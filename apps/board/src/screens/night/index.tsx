import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function NightScreen() {
  return <Sheet title={useSharedWords()('nav.night')}>{null}</Sheet>;
}
