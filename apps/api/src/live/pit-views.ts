import type { Band, CheckView, PitSettings, PitView } from '@stokehold/domain/contract';
import { type EpochS, type PitId, toIso } from '@stokehold/domain/quantity';
import type { PitFire } from '../pits/index.js';

/** What is known of the pits of one yard, each part from its own module. */
export interface PitsKnown {
  readonly pits: readonly PitSettings[];
  readonly tonight: readonly { readonly pitId: PitId; readonly band: Band; readonly lightAt: EpochS }[];
  readonly fires: readonly PitFire[];
  readonly checks: readonly CheckView[];
}

/** The pits as the screens show them; a retired one only while it still burns. */
export const pitViews = ({ pits, tonight, fires, checks }: PitsKnown): PitView[] =>
  pits
    .map((pit): PitView => {
      const burns = tonight.find(({ pitId }) => pitId === pit.id);
      const fire = fires.find(({ pitId }) => pitId === pit.id);
      return {
        pit,
        tonight: burns ? { band: burns.band, lightAt: toIso(burns.lightAt) } : null,
        fire: fire?.fire ?? null,
        due: fire?.due ?? null,
        advice: fire?.advice ?? null,
        past: fire?.past ?? [],
        checks: checks.filter(({ pitId }) => pitId === pit.id),
      };
    })
    .filter(({ pit, tonight: burns }) => !pit.retired || burns !== null);
