import type { TrimView } from '@stokehold/domain/contract';
import type { Paper } from '../../parts/paper.js';
import type { Figures } from '../../units/figures.js';
import type { SayWoodyardWords } from '../../words/woodyard.js';

interface Names {
  readonly lot: (id: string) => string;
  readonly pit: (id: string) => string;
}

/** Tonight's trim list as a paper to take to the saw, with its cautions. */
export function trimPaper(trim: readonly TrimView[], at: string, names: Names, { say, caution, figures }: { readonly say: SayWoodyardWords; readonly caution: string; readonly figures: Figures }): Paper {
  return {
    title: say('trim.paper'),
    lines: [figures.dayTime(at)],
    tables: [{
      title: say('answer.trim'), heads: [say('trim.for'), say('trim.lot'), say('pieces'), say('trim.length'), say('trim.cutsHead'), say('trim.gives'), say('offcuts')],
      rows: trim.map((line) => [
        names.pit(line.pitId), names.lot(line.lotId), String(line.splits), figures.of('length', line.pieceLengthM), String(line.cuts), String(line.pieces), line.offcuts > 0 ? `${line.offcuts} × ${figures.of('length', line.offcutM)}` : '–',
      ]),
    }],
    notes: [caution, ...(trim.some(({ short }) => short) ? [say('trim.short')] : [])],
  };
}
