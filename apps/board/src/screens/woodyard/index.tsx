import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function WoodyardScreen() {
  return <Sheet title={useSharedWords()('nav.woodyard')}>{null}</Sheet>;
}
