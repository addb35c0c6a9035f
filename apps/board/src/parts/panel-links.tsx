import { Link } from 'wouter';
import css from './panel-links.module.css';

interface PanelLinksProps<T extends string> {
  readonly label: string;
  readonly panels: readonly { readonly show: T; readonly label: string; readonly href: string }[];
  readonly shown: T;
}

/** The panels of one desk screen, each with an address of its own. */
export function PanelLinks<T extends string>({ label, panels, shown }: PanelLinksProps<T>) {
  return (
    <nav className={css['shows']} aria-label={label}>
      {panels.map((panel) => (
        <Link key={panel.show} href={panel.href} aria-current={panel.show === shown ? 'true' : undefined}>
          {panel.label}
        </Link>
      ))}
    </nav>
  );
}
