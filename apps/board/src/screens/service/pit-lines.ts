import type { PitAgainst } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayServiceWords } from '../../words/service.js';

/** A sentence about a pit's wood, and how many splits more or fewer it was than planned. */
export interface PitLine {
  readonly said: string;
  readonly moreSplits: number;
}

/** Gusts in which fewer splits than these were burned and planned explain nothing. Source: our choice. */
const FEW_SPLITS = 2;

/** Each pit's wood beside its plan, in sentences: in all, then in the gusts; the pit with the most above its plan first. */
export function pitLines(pits: readonly PitAgainst[], say: SayServiceWords, figures: Figures): readonly PitLine[] {
  const wood = (pit: string, { splits, plannedSplits }: { readonly splits: number; readonly plannedSplits: number }) => ({
    pit, splits: figures.count(splits), planned: figures.count(plannedSplits, 1),
    change: plannedSplits > 0 ? `${splits > plannedSplits ? '+' : ''}${figures.percent(splits / plannedSplits - 1)}` : '–',
  });
  const more = (one: { readonly splits: number; readonly plannedSplits: number }) => one.splits - one.plannedSplits;
  return [...pits].sort((a, b) => more(b) - more(a)).flatMap(({ pit, gusts, ...all }) => [
    { said: say('beside.pit', wood(pit, all)), moreSplits: more(all) },
    ...(gusts && Math.max(gusts.splits, gusts.plannedSplits) >= FEW_SPLITS ? [{ said: say(`beside.gusts.${gusts.onto}`, { ...wood(pit, gusts), span: figures.span(gusts.lengthS) }), moreSplits: more(gusts) }] : []),
  ]);
}
