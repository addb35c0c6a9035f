import type { AirAdviceView, AirSetView } from '@stokehold/domain/contract';
import type { SayFireWords } from '../../words/fire.js';

/** Everyday firing: where nothing is known of how the air stands. */
export const USUAL_AIR: AirSetView = { door: 'usual', damper: 'open', screen: false };

const same = (a: AirSetView, b: AirSetView) => a.door === b.door && a.damper === b.damper && a.screen === b.screen;

/** Which of the two the chosen air is; neither where it was set another way. */
export function airChosen(chosen: AirSetView | undefined, before: AirSetView, advised: AirSetView): 'before' | 'advised' | undefined {
  if (chosen === undefined || same(chosen, before)) return 'before';
  return same(chosen, advised) ? 'advised' : undefined;
}

/** Only the parts that the advice changes: 'door two fingers' is read faster than all three. */
export const changedSaid = (air: AirSetView, changes: AirAdviceView['changes'], say: SayFireWords): string =>
  changes.map((part) => (part === 'screen' ? say(air.screen ? 'screen.yes' : 'screen.no') : part === 'door' ? say(`door.${air.door}`) : say(`damper.${air.damper}`))).join(', ');
