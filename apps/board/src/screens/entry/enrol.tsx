import { useSharedWords } from '../../words/shared.js';

export function EnrolScreen() {
  return <main>{useSharedWords()('opening')}</main>;
}
