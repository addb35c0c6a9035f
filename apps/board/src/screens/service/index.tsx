import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function ServiceScreen() {
  return <Sheet title={useSharedWords()('nav.service')}>{null}</Sheet>;
}
