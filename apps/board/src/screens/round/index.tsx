import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function RoundScreen() {
  return <Sheet title={useSharedWords()('nav.round')}>{null}</Sheet>;
}
