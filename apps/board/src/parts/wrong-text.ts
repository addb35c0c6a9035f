import { useDeskWords } from '../words/desk.js';
import { useSharedWords } from '../words/shared.js';
import type { Wrong } from './form-reading.js';

/** Says what is wrong with a field and what to do; nothing where nothing is. */
export function useWrongText(): (wrong: Wrong | undefined) => string | undefined {
  const shared = useSharedWords();
  const desk = useDeskWords();
  return (wrong) => {
    switch (wrong?.code) {
      case undefined:
        return undefined;
      case 'needed':
        return shared('needed');
      case 'not-a-number':
        return shared('notANumber');
      case 'between':
        return shared('between', { low: wrong.low, high: wrong.high });
      case 'whole-number':
        return desk('wholeNumber');
      case 'time-missing':
        return desk('timeMissing');
      case 'time-skipped':
        return desk('timeSkipped', { from: wrong.from, to: wrong.to });
      case 'too-long':
        return desk('tooLong', { count: wrong.count });
    }
  };
}
