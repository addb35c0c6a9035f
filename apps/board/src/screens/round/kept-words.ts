import type { YardState } from '@stokehold/domain/contract';
import type { Kept } from '../../live/kept.js';
import type { Figures } from '../../units/figures.js';
import type { SayRoundWords } from '../../words/round.js';
import type { SaySharedWords } from '../../words/shared.js';

interface KeptWords {
  readonly state: YardState | undefined;
  readonly say: SayRoundWords;
  readonly shared: SaySharedWords;
  readonly figures: Figures;
}

/** What was recorded, in a few words: 'Juniper 02:14'. */
export function keptWords(kept: Kept, { state, say, shared, figures }: KeptWords): string {
  const time = figures.time(kept.recordedAt);
  switch (kept.route) {
    case 'recordCheck': {
      const { pitId } = kept.input;
      return say('what.recordCheck', { pit: state?.pits.find((view) => view.pit.id === pitId)?.pit.name ?? '', time });
    }
    case 'reportBreak':
      return say(`what.${kept.input.state}`, { time });
    case 'reportPresence':
      return say(`what.${kept.input.state}`);
    case 'finishTask': {
      const { taskId } = kept.input;
      const kind = state?.tasks.find((task) => task.id === taskId)?.kind;
      return say('what.finishTask', { task: kind ? shared(`task.${kind}`) : '', time });
    }
  }
}
