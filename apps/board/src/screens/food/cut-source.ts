import type { CutSettings } from '@stokehold/domain/contract';
import type { SayFoodWords } from '../../words/food.js';
import { sayIn } from '../../words/words.js';

/** Where a cut's values come from: in the reader's language while nobody has rewritten it, else as it was written. */
export function sourceOf({ code, source }: Pick<CutSettings, 'code' | 'source'>, say: SayFoodWords): string {
  const key = `cuts.source.${code}` as Parameters<SayFoodWords>[0];
  return (sayIn('en', 'food') as SayFoodWords)(key) === source ? say(key) : source;
}
