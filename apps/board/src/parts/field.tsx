import { useId, type InputHTMLAttributes, type ReactNode, type SelectHTMLAttributes } from 'react';
import css from './field.module.css';

interface Around {
  readonly label: string;
  /** The unit behind the box, already in the yard's units. */
  readonly unit?: string | undefined;
  /** What is wrong with what was typed and what to do, or nothing. */
  readonly wrong?: string | undefined;
  readonly hint?: string | undefined;
}

function Framed({ label, unit, wrong, hint, id, children }: Around & { readonly id: string; readonly children: ReactNode }) {
  return (
    <div className={css['field']}>
      <label className={css['label']} htmlFor={id}>
        {label}
      </label>
      <span className={css['line']}>
        {children}
        {unit && <span>{unit}</span>}
      </span>
      {hint && <span className={css['label']}>{hint}</span>}
      {wrong && (
        <span className={css['wrong']} id={`${id}-wrong`} role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}

type FieldProps = Around & Omit<InputHTMLAttributes<HTMLInputElement>, 'id' | 'className'>;

/** A labelled box to type into. */
export function Field({ label, unit, wrong, hint, ...input }: FieldProps) {
  const id = useId();
  return (
    <Framed {...{ label, unit, wrong, hint, id }}>
      <input id={id} className={css['input']} aria-invalid={wrong ? true : undefined} aria-describedby={wrong ? `${id}-wrong` : undefined} {...input} />
    </Framed>
  );
}

type PickProps = Around & Omit<SelectHTMLAttributes<HTMLSelectElement>, 'id' | 'className'>;

/** A labelled list to pick one from; its options are its children. */
export function Pick({ label, unit, wrong, hint, ...select }: PickProps) {
  const id = useId();
  return (
    <Framed {...{ label, unit, wrong, hint, id }}>
      <select id={id} className={css['input']} aria-invalid={wrong ? true : undefined} aria-describedby={wrong ? `${id}-wrong` : undefined} {...select} />
    </Framed>
  );
}
