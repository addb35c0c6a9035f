import { useQueryClient } from '@tanstack/react-query';
import type { Problem, YardState } from '@stokehold/domain/contract';
import { STATE } from '../live/query-keys.js';
import { figuresOf } from '../units/figures.js';
import { useRefusalWords } from '../words/refusal.js';
import { useLanguage } from '../words/words.js';
import { refusalInWords } from './refusal-words.js';

/** Why the server said no, with whom it is about and the figures it speaks of. */
export function RefusalTold({ problem }: { readonly problem: Problem }) {
  const say = useRefusalWords();
  const language = useLanguage();
  // As it is known already: a screen before sign-in has no yard and asks for none.
  const state = useQueryClient().getQueryData<YardState>(STATE);
  const figures = figuresOf({ units: state?.yard.units ?? 'us', timeZone: state?.yard.timeZone ?? 'UTC', language });
  return refusalInWords(problem, { say, figures, state });
}
