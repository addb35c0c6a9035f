import { useDeskWords } from '../../words/desk.js';
import { useNightWords } from '../../words/night.js';
import { useSharedWords } from '../../words/shared.js';
import type { Fault } from './shift-of-draft.js';

/** What is wrong at a field of the shift form, in words. */
export function useFaultText(faults: readonly Fault[]): (field: string) => string | undefined {
  const say = useNightWords();
  const desk = useDeskWords();
  const shared = useSharedWords();
  return (field) => {
    const fault = faults.find((one) => one.field === field);
    if (!fault) return undefined;
    switch (fault.code) {
      case 'time-missing':
        return desk('timeMissing');
      case 'time-skipped':
        return desk('timeSkipped', fault.values ?? {});
      case 'number-unreadable':
        return shared('notANumber');
      default:
        return say(`fault.${fault.code}`);
    }
  };
}
