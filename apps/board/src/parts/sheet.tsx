import { useEffect, useRef, type ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import { useLeave, useMe } from '../live/use-me.js';
import { useMay } from '../live/use-setup.js';
import { useClock } from '../live/use-clock.js';
import { useFigures } from '../units/use-figures.js';
import { useSharedWords } from '../words/shared.js';
import { Button } from './button.js';
import { ClockSetNotice } from './clock-set-notice.js';
import { ConnectionNotice } from './connection-notice.js';
import { HouseNotice } from './house-notice.js';
import { PracticeBand } from './practice-band.js';
import css from './sheet.module.css';
import { UnsentNotice } from './unsent-notice.js';
import { useTheme } from './use-theme.js';

const PLACES = ['night', 'food', 'loading', 'woodyard', 'service', 'records', 'setup', 'status', 'print', 'round', 'wall'] as const;
/** Places that nobody else may see. */
const OF_MANAGER: readonly string[] = ['status'];

function Clock() {
  const now = useClock();
  return <span className={`figure ${css['yard']}`}>{useFigures().time(now)}</span>;
}

function SignOut() {
  const say = useSharedWords();
  const { leave, away } = useLeave();
  return (
    <>
      <Button onClick={() => void leave()}>{say('do.signOut')}</Button>
      {away && <span role="alert">{say('noAnswer')}</span>}
    </>
  );
}

/** Where to go; on a phone a line that is pushed along, and where one is stands in sight. */
function Places() {
  const say = useSharedWords();
  const mayManage = useMay('manage');
  const [place] = useLocation();
  const here = place.split('/')[1];
  const line = useRef<HTMLElement>(null);
  useEffect(() => {
    line.current?.querySelector('[aria-current]')?.scrollIntoView({ inline: 'center', block: 'nearest' });
  }, [here]);
  return (
    <nav ref={line} className={css['nav']} aria-label={say('nav.label')}>
      {PLACES.filter((name) => mayManage || !OF_MANAGER.includes(name)).map((name) => (
        <Link key={name} href={`/${name}`} aria-current={here === name ? 'page' : undefined}>
          {say(`nav.${name}`)}
        </Link>
      ))}
    </nav>
  );
}

interface SheetProps {
  readonly title: string;
  /** To the right of the title: the few things that belong to the whole sheet. */
  readonly beside?: ReactNode;
  /** Uses the whole width of a large screen. */
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** The frame of a desk screen: where to go, who is here, what time it is, and whether what is shown is current. */
export function Sheet({ title, beside, wide = false, children }: SheetProps) {
  const say = useSharedWords();
  const { me } = useMe();
  const { theme, turn } = useTheme();
  const mayManage = useMay('manage');
  const here = useLocation()[0].split('/')[1];
  useEffect(() => {
    document.title = `${title} · Stokehold`;
  }, [title]);
  return (
    <>
      <a className={css['skip']} href="#content">
        {say('nav.skip')}
      </a>
      <PracticeBand />
      <header className={css['head']}>
        <span className={`${css['yard']} ${css['name']}`}>{me?.yard.name}</span>
        <Places />
        <Clock />
        <Button look="bare" onClick={turn}>
          {say(theme === 'night' ? 'theme.day' : 'theme.night')}
        </Button>
        <span>{me?.person?.name}</span>
        <SignOut />
      </header>
      <ConnectionNotice />
      <ClockSetNotice />
      <UnsentNotice />
      {mayManage && here !== 'status' && <HouseNotice />}
      <main id="content" className={`${css['body']} ${wide ? css['wide'] : ''}`}>
        <div className={css['title']}>
          <h1>{title}</h1>
          {beside}
        </div>
        {children}
      </main>
    </>
  );
}
