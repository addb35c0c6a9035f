export interface Page<T> {
  readonly shown: readonly T[];
  readonly number: number;
  readonly of: number;
}

/**
 * What stands on the wall now when more stripes are wanted than fit: those that need hands stay, the others take turns in
 * what room is left; one place always turns, so that no fire stays unseen. `turn` counts up, one page each.
 */
export function pageOf<T>(stripes: readonly T[], needsHands: (stripe: T) => boolean, room: number, turn: number): Page<T> {
  if (stripes.length <= room) return { shown: stripes, number: 1, of: 1 };
  const staying = stripes.filter(needsHands).slice(0, room - 1);
  const turning = stripes.filter((stripe) => !staying.includes(stripe));
  const places = Math.max(1, room - staying.length);
  const of = Math.ceil(turning.length / places);
  const number = (turn % of) + 1;
  return { shown: [...staying, ...turning.slice((number - 1) * places, number * places)], number, of };
}
