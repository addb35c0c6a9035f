import type { ButtonHTMLAttributes } from 'react';
import css from './button.module.css';

interface ButtonProps extends ButtonHTMLAttributes<HTMLButtonElement> {
  /** main: the one thing this place is for. bare: a way aside, written like a link. */
  readonly look?: 'main' | 'plain' | 'bare';
}

export function Button({ look = 'plain', className, type = 'button', ...rest }: ButtonProps) {
  const classes = [css['button'], look !== 'plain' && css[look], className].filter(Boolean).join(' ');
  return <button type={type} className={classes} {...rest} />;
}
