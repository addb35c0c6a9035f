import { useSharedWords } from '../words/shared.js';
import css from './caution.module.css';

/** The usual caution, short, at the place of the work. */
export function Caution({ about }: { readonly about: 'fire' | 'air' | 'saw' | 'food' | 'ash' | 'lift' }) {
  const say = useSharedWords();
  return (
    <p className={css['caution']} role="note" aria-label={say('caution.label')}>
      <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
        <path d="M11 2 21 20H1Z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round" />
        <path d="M11 8v6M11 16.4v1.4" stroke="currentColor" strokeWidth="2.2" />
      </svg>
      <span>{say(`caution.${about}`)}</span>
    </p>
  );
}
