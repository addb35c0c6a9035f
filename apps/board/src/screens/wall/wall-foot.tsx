import type { WoodView, YardState } from '@stokehold/domain/contract';
import { useMemo } from 'react';
import { callsNow, subjectOf, toldWords } from '../../parts/alarms-said.js';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { useAlarmWords } from '../../words/alarm.js';
import { useSharedWords } from '../../words/shared.js';
import { useWallWords } from '../../words/wall.js';
import { calledNames } from './called.js';
import { crewNotes } from './crew-notes.js';
import { brokenLine, isDrawn, widthIn } from './foot-lines.js';
import type { Page } from './pages.js';
import type { WallSizes } from './sizes.js';
import { crewWords } from './wall-words.js';
import css from './wall.module.css';

const BAR = 100;

function WoodBar({ wood }: { readonly wood: WoodView }) {
  const whole = Math.max(wood.splitsLeft, wood.splitsNeeded, 1) * 1.1;
  const at = (splits: number) => (BAR * splits) / whole;
  return (
    <svg className={css['bar']} viewBox={`0 0 ${BAR} 10`} preserveAspectRatio="none" aria-hidden="true">
      <rect y="2" width={BAR} height="6" fill="var(--raised)" />
      <rect y="2" width={at(wood.splitsLeft)} height="6" fill="var(--wood)" />
      <path d={`M${at(wood.splitsNeeded)} 0V10`} stroke="var(--strong)" strokeWidth="1.4" />
    </svg>
  );
}

/** `brief` while an alarm needs the room: what is needed then shows on the bar alone. */
function Wood({ wood, brief }: { readonly wood: WoodView; readonly brief: boolean }) {
  const say = useWallWords();
  const needed = Math.ceil(wood.splitsNeeded);
  const missing = needed - wood.splitsLeft;
  return (
    <span className={css['wood']}>
      <span className={css['quiet']}>{say('wood')}</span>
      <WoodBar wood={wood} />
      <span>
        {say('splits', { count: wood.splitsLeft })}
        {missing <= 0 && !brief && <span className={css['quiet']}>, {say('need', { needed })}</span>}
      </span>
      {missing > 0 && <strong className={css['soonWord']}>▲ {say('short', { missing })}</strong>}
    </span>
  );
}

interface WallFootProps {
  readonly state: YardState;
  readonly turn: number;
  readonly page: Page<unknown>;
  readonly sizes: WallSizes;
}

/** The alarms that call, line by line: what, who was told, and what to do, a sentence each so that it fits. */
function useAlarmLines(state: YardState, names: ReadonlyMap<string, string>): readonly string[] {
  const say = useAlarmWords();
  const shared = useSharedWords();
  const figures = useFigures();
  return state.alarms.filter(callsNow).flatMap((alarm) => {
    const named = [subjectOf(alarm, state), shared(`alarm.${alarm.kind}`)].filter(Boolean).join(': ');
    const does = say(`${alarm.kind}.do`).split(/(?<=\.) |; /);
    return [named, toldWords(alarm, (id) => names.get(id) ?? '', say, figures), ...does].map((line) => `▲ ${line}`);
  });
}

/** What stands in turn: each line whole where it fits, else in pieces of its own turn. */
function Turning({ lines, turn, fontPx }: { readonly lines: readonly string[]; readonly turn: number; readonly fontPx: number }) {
  const { ref, width } = useWidth<HTMLSpanElement>(0);
  const said = lines.join('\n');
  const drawn = isDrawn(fontPx);
  const fitting = useMemo(() => {
    void drawn;
    return said.split('\n').flatMap((line) => brokenLine(line, width, widthIn(fontPx)));
  }, [said, width, fontPx, drawn]);
  return (
    <span ref={ref} className={css['turning']}>
      {width > 0 && fitting[turn % fitting.length]}
    </span>
  );
}

/** Wood left against wood needed; and in turn the alarms that call, or who is missing, who breaks, which of the fires are on show. */
export function WallFoot({ state, turn, page, sizes }: WallFootProps) {
  const say = useWallWords();
  const figures = useFigures();
  const names = calledNames(state.people);
  const notes = state.shift ? crewNotes(state.shift).map((note) => crewWords(note, names.get(note.personId) ?? '', say, figures)) : [];
  const alarms = useAlarmLines(state, names);
  const lines = [
    ...alarms,
    ...(alarms.length > 0 ? [] : notes),
    ...(page.of > 1 ? [say('fires', { number: page.number, of: page.of })] : []),
  ];
  return (
    <footer className={`${css['foot']} figure`}>
      {sizes.readable ? <Wood wood={state.wood} brief={alarms.length > 0} /> : <strong>{say('tooSmall', { distance: figures.of('ground', sizes.readFromM) })}</strong>}
      <Turning lines={lines} turn={turn} fontPx={sizes.small} />
    </footer>
  );
}
