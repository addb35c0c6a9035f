import { useNightWords } from '../../words/night.js';
import css from './night-picture.module.css';

/** What the shapes of the picture stand for. */
export function Legend() {
  const say = useNightWords();
  const entries = [
    ['legend.check', <path key="c" className={css['mark']} d="M4 17h12l-6 -12z" />],
    ['legend.done', <path key="d" className={`${css['mark']} ${css['past']}`} d="M4 17h12l-6 -12z" />],
    ['legend.late', <g key="l" className={`${css['mark']} ${css['late']}`}><path className={css['trail']} d="M0 17H12" /><path d="M6 17h13l-6.5 -16z" /></g>],
    ['legend.task', <path key="t" className={css['mark']} d="M4 17v-11h11v11z" />],
    ['legend.rest', <rect key="r" className={`${css['rest']} ${css['planned']}`} x="2" y="3" width="16" height="14" rx="3" />],
    ['legend.window', <path key="w" className={css['window']} d="M2 8V16H18V8" />],
    ['legend.band', <rect key="b" className={css['band']} x="1" y="5" width="18" height="10" />],
    ['legend.outside', <rect key="o" className={css['outside']} x="1" y="5" width="18" height="10" />],
  ] as const;
  return (
    <div className={css['legend']}>
      {entries.map(([key, shape]) => (
        <span key={key}>
          <svg width="20" height="20" aria-hidden="true">
            {shape}
          </svg>
          {say(key)}
        </span>
      ))}
    </div>
  );
}
