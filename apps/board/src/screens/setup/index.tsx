import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function SetupScreen() {
  return <Sheet title={useSharedWords()('nav.setup')}>{null}</Sheet>;
}
