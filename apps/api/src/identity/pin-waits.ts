import { type EpochS, later } from '@stokehold/domain/quantity';

/** Wrong tries before the first wait, after which the PIN is off on this device, and after which it is off everywhere. */
const FREE_TRIES = 5;
const OFF_ON_DEVICE = 10;
const OFF_EVERYWHERE = 100;
const FIRST_WAIT_S = 30;
const LONGEST_WAIT_S = 15 * 60;

/** Wrong PINs in a row, of one person on one device: nobody can shut a colleague out from elsewhere. */
export interface WrongPins {
  readonly inARow: number;
  readonly waitUntil: EpochS | null;
}

export type PinStand = { readonly kind: 'open' } | { readonly kind: 'wait'; readonly seconds: number } | { readonly kind: 'off' };

/** Whether a PIN may be tried now. `everywhere`: wrong PINs in a row of this person, summed over all devices. */
export function pinStand(wrong: WrongPins, everywhere: number, now: EpochS): PinStand {
  if (wrong.inARow >= OFF_ON_DEVICE || everywhere >= OFF_EVERYWHERE) return { kind: 'off' };
  if (wrong.waitUntil !== null && wrong.waitUntil > now) return { kind: 'wait', seconds: wrong.waitUntil - now };
  return { kind: 'open' };
}

/** One more wrong PIN: from the fifth on a wait of 30 s that doubles, at most 15 min. */
export function afterWrongPin(wrong: WrongPins, now: EpochS): WrongPins {
  const inARow = wrong.inARow + 1;
  if (inARow < FREE_TRIES) return { inARow, waitUntil: null };
  return { inARow, waitUntil: later(now, Math.min(FIRST_WAIT_S * 2 ** (inARow - FREE_TRIES), LONGEST_WAIT_S)) };
}
