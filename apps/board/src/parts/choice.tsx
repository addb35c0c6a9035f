import { useId, useRef, type CSSProperties, type KeyboardEvent, type ReactNode } from 'react';
import css from './choice.module.css';

export interface Option<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly picture?: ReactNode;
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly value: T | undefined;
  readonly onChoose: (value: T) => void;
  readonly columns?: number;
  /** The label is for screen readers only, where the buttons speak for themselves. */
  readonly labelUnseen?: boolean;
  readonly className?: string | undefined;
  readonly optionClassName?: string | undefined;
}

const STEP: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** One of several, as big buttons in a row. Arrow keys move, as in any group of radio buttons. */
export function Choice<T extends string>(props: ChoiceProps<T>) {
  const { label, options, value, onChoose, columns = options.length, labelUnseen, className, optionClassName } = props;
  const id = useId();
  const row = useRef<HTMLDivElement>(null);
  const at = Math.max(0, options.findIndex((option) => option.value === value));

  const move = (event: KeyboardEvent) => {
    const step = STEP[event.key];
    if (!step) return;
    event.preventDefault();
    const next = (at + step + options.length) % options.length;
    const option = options[next];
    if (option) onChoose(option.value);
    row.current?.querySelectorAll('button')[next]?.focus();
  };
  return (
    <div className={className}>
      <div id={id} className={labelUnseen ? 'unseen' : css['label']}>
        {label}
      </div>
      <div ref={row} role="radiogroup" aria-labelledby={id} className={css['row']} style={{ '--columns': columns } as CSSProperties} onKeyDown={move}>
        {options.map((option, index) => (
          <button
            key={option.value}
            type="button"
            role="radio"
            aria-checked={option.value === value}
            tabIndex={index === at ? 0 : -1}
            className={[css['option'], optionClassName].filter(Boolean).join(' ')}
            onClick={() => onChoose(option.value)}
          >
            {option.picture}
            {option.label}
          </button>
        ))}
      </div>
    </div>
  );
}
