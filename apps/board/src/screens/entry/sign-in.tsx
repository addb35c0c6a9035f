import { useSharedWords } from '../../words/shared.js';

export function SignInScreen() {
  return <main>{useSharedWords()('opening')}</main>;
}
