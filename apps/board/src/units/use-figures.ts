import { useMemo } from 'react';
import { useYard } from '../live/use-yard.js';
import { useLanguage } from '../words/words.js';
import { figuresOf, type Figures } from './figures.js';

/** The figures of this yard in the language of the person who looks; US units and UTC before the yard is known. */
export function useFigures(): Figures {
  const yard = useYard()?.yard;
  const language = useLanguage();
  const units = yard?.units ?? 'us';
  const timeZone = yard?.timeZone ?? 'UTC';
  return useMemo(() => figuresOf({ units, timeZone, language }), [units, timeZone, language]);
}
