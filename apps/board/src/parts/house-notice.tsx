import { Link } from 'wouter';
import { useStatus } from '../live/use-status.js';
import { useFigures } from '../units/use-figures.js';
import { useSharedWords } from '../words/shared.js';
import css from './connection-notice.module.css';
import { noticeOf } from './notice-of.js';

const EVERY_MS = 60_000;

/** Says on the manager's desk that the disk is nearly full, or that a part of the house does not work. */
export function HouseNotice() {
  const say = useSharedWords();
  const figures = useFigures();
  const { status } = useStatus(EVERY_MS);
  const notice = status && noticeOf(status.parts);
  if (!notice) return null;
  const text = notice.kind === 'down' ? say('house.down', { count: notice.count }) : say('house.disk', { used: figures.percent(Math.floor(notice.usedFrac * 100) / 100), left: figures.bytes(notice.leftBytes) });
  return (
    <div className={notice.kind === 'down' ? css['lost'] : css['unsent']} role="alert">
      {text} <Link href="/status">{say('house.more')}</Link>
    </div>
  );
}
