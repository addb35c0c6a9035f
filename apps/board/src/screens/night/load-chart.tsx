import { useNightWords } from '../../words/night.js';
import type { Figures } from '../../units/figures.js';
import { failingStretches } from './failing-stretches.js';
import css from './night.module.css';

/** One hour's work against those who are there. */
export interface ShownHour {
  readonly fromAt: number;
  readonly untilAt: number;
  readonly loadFrac: number;
  readonly fails: boolean;
  readonly missingPeople: number;
  readonly skill?: string | null | undefined;
  readonly mend?: { readonly code: 'none' | 'move-tasks' | 'call-people' | 'bank-fires-or-call' };
}

const HIGH_PX = 120;
const FULL_PX = 80;

/** Columns of work an hour; the line is all that those present can do. What is above it will be late. */
export function LoadChart({ hours, figures }: { readonly hours: readonly ShownHour[]; readonly figures: Figures }) {
  const say = useNightWords();
  const wide = 100 / Math.max(1, hours.length);
  const worst = hours.filter(({ fails }) => fails).length;
  return (
    <figure className={css['load']} role="img" aria-label={say('load.spoken', { count: hours.length, fails: worst })}>
      <div className={css['columns']} style={{ height: HIGH_PX }} aria-hidden="true">
        {hours.map(({ fromAt, loadFrac, fails }) => (
          <div key={fromAt} style={{ width: `${wide}%` }}>
            <span className={fails ? css['fails'] : css['holds']} style={{ height: Math.max(fails ? 24 : 2, Math.min(HIGH_PX, loadFrac * FULL_PX)) }}>
              {fails ? '▲' : ''}
            </span>
          </div>
        ))}
        <i style={{ bottom: FULL_PX }} />
      </div>
      <div className={css['hourNames']} aria-hidden="true">
        {hours.map(({ fromAt }) => (
          <span key={fromAt} style={{ width: `${wide}%` }}>
            {figures.time(fromAt * 1000).slice(0, 2)}
          </span>
        ))}
      </div>
    </figure>
  );
}

/** Which hours fail and what would mend them, as sentences. */
export function LoadSentences({ hours, figures, skillName }: { readonly hours: readonly ShownHour[]; readonly figures: Figures; readonly skillName: (skill: string) => string }) {
  const say = useNightWords();
  const failing = failingStretches(hours);
  if (failing.length === 0) return <p>{say('load.holds')}</p>;
  return (
    <ul className={css['sentences']}>
      {failing.map(({ fromAt, untilAt, missingPeople, skill, mend }) => (
        <li key={`${fromAt}${skill ?? ''}`}>
          <strong className={css['warn']}>▲ {figures.time(fromAt * 1000)}–{figures.time(untilAt * 1000)}</strong>{' '}
          {skill ? say('load.missingSkill', { count: missingPeople, skill: skillName(skill) }) : say('load.missing', { count: missingPeople })}{' '}
          {say(`mend.${mend?.code ?? 'call-people'}`)}
        </li>
      ))}
    </ul>
  );
}
