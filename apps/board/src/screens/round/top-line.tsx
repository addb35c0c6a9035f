import type { YardState } from '@stokehold/domain/contract';
import { useKept } from '../../live/use-kept.js';
import { useFigures } from '../../units/use-figures.js';
import { useRoundWords } from '../../words/round.js';
import { myWork, walkM } from './my-work.js';
import css from './round.module.css';

interface TopLineProps {
  readonly state: YardState;
  readonly personId: string;
  readonly pitId: string | undefined;
  readonly nowMs: number;
}

/** The time, what is kept on this phone, and which fire comes after this one, with the way to it. */
export function TopLine({ state, personId, pitId, nowMs }: TopLineProps) {
  const say = useRoundWords();
  const figures = useFigures();
  const count = useKept().length;
  const here = state.pits.find((view) => view.pit.id === pitId);
  const after = myWork(state, personId).find((work) => work.kind === 'check' && work.view.pit.id !== pitId);
  const then = after?.kind === 'check' ? after.view.pit : undefined;
  return (
    <div className={`${css['top']} figure`}>
      <span>
        {figures.time(nowMs)}
        {count > 0 && ` · ${say('keptHere', { count })}`}
      </span>
      {then && <span>{here ? say('thenWalk', { pit: then.name, walk: figures.of('walk', walkM(here.pit, then)) }) : say('then', { pit: then.name })}</span>}
    </div>
  );
}
