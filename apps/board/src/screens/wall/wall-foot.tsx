import type { WoodView, YardState } from '@stokehold/domain/contract';
import { useMemo } from 'react';
import { callsNow, subjectOf, toldWords } from '../../parts/alarms-said.js';
import { useWidth } from '../../parts/use-width.js';
import { useFigures } from '../../units/use-figures.js';
import { useAlarmWords } from '../../words/alarm.js';
import { useSharedWords } from '../../words/shared.js';
import { useWallWords } from '../../words/wall.js';
import { calledNames } from './called.js';
import { crewNotes, isMissing } from './crew-notes.js';
import { brokenLine, isDrawn, widthIn, type FootLine } from './foot-lines.js';
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

/** The alarms that call, line by line: what, who was told, and what to do, a sentence each so that it fits; each names its pit. */
function useAlarmLines(state: YardState, names: ReadonlyMap<string, string>): readonly FootLine[] {
  const say = useAlarmWords();
  const shared = useSharedWords();
  const figures = useFigures();
  return state.alarms.filter(callsNow).flatMap((alarm) => {
    const { pit, probe } = subjectOf(alarm, state);
    const does = say(`${alarm.kind}.do`).split(/(?<=\.) |; /);
    const what = [probe, shared(`alarm.${alarm.kind}`)].filter(Boolean).join(': ');
    return [what, toldWords(alarm, (id) => names.get(id) ?? '', say, figures), ...does].map((text) => ({ mark: pit ? `▲ ${pit}: ` : '▲ ', text }));
  });
}

/** What stands in turn: each line whole where it fits, else in pieces of its own turn. */
function Turning({ lines, turn, fontPx }: { readonly lines: readonly FootLine[]; readonly turn: number; readonly fontPx: number }) {
  const { ref, width } = useWidth<HTMLSpanElement>(0);
  const said = JSON.stringify(lines);
  const drawn = isDrawn(fontPx);
  const fitting = useMemo(() => {
    void drawn;
    return (JSON.parse(said) as typeof lines).flatMap((line) => brokenLine(line, width, widthIn(fontPx)));
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
  const alarms = useAlarmLines(state, names);
  // While an alarm calls it is still said who is missing; breaks can wait.
  const notes = state.shift ? crewNotes(state.shift).filter((note) => alarms.length === 0 || isMissing(note)) : [];
  const others = [...notes.map((note) => crewWords(note, names.get(note.personId) ?? '', say, figures)), ...(page.of > 1 ? [say('fires', { number: page.number, of: page.of })] : [])];
  const lines = [...alarms, ...others.map((text) => ({ mark: '', text }))];
  return (
    <footer className={`${css['foot']} figure`}>
      {sizes.readable ? <Wood wood={state.wood} brief={alarms.length > 0} /> : <strong>{say('tooSmall', { distance: figures.of('ground', sizes.readFromM) })}</strong>}
      <Turning lines={lines} turn={turn} fontPx={sizes.small} />
    </footer>
  );
}
