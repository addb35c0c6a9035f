import type { CookView, PitLoadingView } from '@stokehold/domain/contract';

/** Something to carry now, zones counted from 0 at the fire end; without `from` it stands beside the pit. */
export interface ToDo {
  readonly cookId: string;
  readonly pieces: number;
  readonly from: number | undefined;
  readonly zone: number;
}

type Lying = Pick<CookView, 'id' | 'onAt' | 'lies'>;

/** What has to be carried on one pit so that it lies as it should; a cook that is not on yet waits for its time. */
export function toDoOn(pitId: string, { placings }: Pick<PitLoadingView, 'placings'>, cooks: readonly Lying[]): readonly ToDo[] {
  return cooks.filter(({ onAt }) => onAt !== null).flatMap((cook): readonly ToDo[] => {
    const should = new Map(placings.filter(({ cookId }) => cookId === cook.id).map(({ zone, pieces }) => [zone, pieces]));
    const lies = new Map(cook.lies.filter((lie) => lie.pitId === pitId).map(({ zone, pieces }) => [zone, pieces]));
    const spare = [...lies].flatMap(([zone, pieces]) => (pieces > (should.get(zone) ?? 0) ? [{ zone, left: pieces - (should.get(zone) ?? 0) }] : []));
    const elsewhere = cook.lies.filter((lie) => lie.pitId !== pitId).reduce((sum, { pieces }) => sum + pieces, 0);
    return [...should].sort(([a], [b]) => a - b).flatMap(([zone, pieces]) => {
      const carried: ToDo[] = [];
      let missing = pieces - (lies.get(zone) ?? 0);
      for (const from of spare) {
        const moved = Math.min(missing, from.left);
        if (moved <= 0) continue;
        carried.push({ cookId: cook.id, pieces: moved, from: from.zone, zone });
        from.left -= moved;
        missing -= moved;
      }
      return missing > 0 && elsewhere === 0 ? [...carried, { cookId: cook.id, pieces: missing, from: undefined, zone }] : carried;
    });
  });
}

/** Food lies in the half of this pit that is next to the fire, now. */
export const liesByFire = (pitId: string, { zones }: Pick<PitLoadingView, 'zones'>, cooks: readonly Pick<CookView, 'lies'>[]): boolean =>
  cooks.some(({ lies }) => lies.some((lie) => lie.pitId === pitId && lie.pieces > 0 && (zones.find(({ zone }) => zone === lie.zone)?.fireEnd ?? false)));

/** What lies in each zone as it should, for the drawing. */
export const drawnLies = ({ placings }: Pick<PitLoadingView, 'placings'>, cooks: readonly Pick<CookView, 'id' | 'shape'>[]) =>
  placings.flatMap(({ cookId, zone, pieces }) => {
    const cook = cooks.find(({ id }) => id === cookId);
    return cook ? [{ zone, pieces, shape: cook.shape }] : [];
  });

/** The next turns and swaps, those within the hour behind still among them. */
export const handlingsAhead = ({ handlings }: Pick<PitLoadingView, 'handlings'>, nowMs: number, most: number) => handlings.filter(({ at }) => Date.parse(at) > nowMs - 3_600_000).slice(0, most);
