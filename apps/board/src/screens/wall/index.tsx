import { Sheet } from '../../parts/sheet.js';
import { useSharedWords } from '../../words/shared.js';

export function WallScreen() {
  return <Sheet title={useSharedWords()('nav.wall')}>{null}</Sheet>;
}
