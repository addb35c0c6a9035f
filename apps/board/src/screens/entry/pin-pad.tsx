import { useEffect } from 'react';
import { Button } from '../../parts/button.js';
import { useEntryWords } from '../../words/entry.js';
import css from './entry.module.css';

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
export const PIN_DIGITS = 6;

interface PinPadProps {
  readonly digits: string;
  readonly busy: boolean;
  readonly onDigits: (digits: string) => void;
}

/** Ten big keys; a keyboard's digits, backspace and enter do the same. */
export function PinPad({ digits, busy, onDigits }: PinPadProps) {
  const say = useEntryWords();
  const add = (digit: string) => !busy && digits.length < PIN_DIGITS && onDigits(digits + digit);
  useEffect(() => {
    const typed = (event: KeyboardEvent) => {
      if (/^\d$/.test(event.key)) add(event.key);
      if (event.key === 'Backspace') onDigits(digits.slice(0, -1));
    };
    addEventListener('keydown', typed);
    return () => removeEventListener('keydown', typed);
  });
  return (
    <div>
      <p className={css['dots']} aria-hidden="true">
        {Array.from({ length: PIN_DIGITS }, (_, n) => (
          <i key={n} data-in={n < digits.length} />
        ))}
      </p>
      <p className="unseen" role="status">
        {say('digits', { count: digits.length })}
      </p>
      <div className={css['pad']}>
        {KEYS.map((digit) => (
          <Button key={digit} onClick={() => add(digit)}>
            {digit}
          </Button>
        ))}
        <span />
        <Button onClick={() => add('0')}>0</Button>
        <Button className={css['erase']} onClick={() => onDigits(digits.slice(0, -1))}>
          {say('erase')}
        </Button>
      </div>
    </div>
  );
}
