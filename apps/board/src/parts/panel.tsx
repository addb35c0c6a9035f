import { useId, type FormEvent, type ReactNode } from 'react';
import type { NoAnswer, Refused } from '../live/refused.js';
import { useSharedWords } from '../words/shared.js';
import { Button } from './button.js';
import { Failure } from './failure.js';
import css from './panel.module.css';

interface PanelProps {
  readonly title: string;
  readonly beside?: ReactNode;
  readonly children: ReactNode;
}

/** One matter of a desk screen, under its own heading. */
export function Panel({ title, beside, children }: PanelProps) {
  const id = useId();
  return (
    <section className={css['panel']} aria-labelledby={id}>
      <div className={css['head']}>
        <h2 id={id}>{title}</h2>
        {beside}
      </div>
      {children}
    </section>
  );
}

interface FormProps {
  readonly onSend: () => void;
  readonly sending: boolean;
  readonly failed: Refused | NoAnswer | undefined;
  /** What the button does: 'Save', 'Sign'. */
  readonly does: string;
  /** Said beside the button after it went through. */
  readonly done?: string | undefined;
  readonly onCancel?: (() => void) | undefined;
  readonly children: ReactNode;
}

/** Fields and one button. A refusal is told beside the button; what was typed stays. */
export function Form({ onSend, sending, failed, does, done, onCancel, children }: FormProps) {
  const say = useSharedWords();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!sending) onSend();
  };
  return (
    <form className={css['form']} onSubmit={submit} noValidate>
      {children}
      <Failure of={failed} />
      <div className={css['buttons']}>
        <Button type="submit" look="main" disabled={sending}>
          {sending ? say('saving') : does}
        </Button>
        {onCancel && <Button onClick={onCancel}>{say('do.cancel')}</Button>}
        {done && <span role="status">{done}</span>}
      </div>
    </form>
  );
}

/** Fields side by side where there is room for them. */
export function Fields({ children, narrow }: { readonly children: ReactNode; readonly narrow?: boolean }) {
  return <div className={narrow ? css['narrow'] : css['fields']}>{children}</div>;
}
