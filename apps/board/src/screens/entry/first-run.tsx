import { useSharedWords } from '../../words/shared.js';

export function FirstRunScreen() {
  return <main>{useSharedWords()('opening')}</main>;
}
