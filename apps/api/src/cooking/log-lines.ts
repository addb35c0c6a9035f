import type { FoodEntryView } from '@stokehold/domain/contract';
import type { FoodCook, ReadingVerdict } from '@stokehold/domain/food';
import { toIso } from '@stokehold/domain/quantity';
import type { KeptEntry } from './cooking.store.js';

/** The lines that stand: those that no later line corrects. */
export function standing(log: readonly KeptEntry[]): KeptEntry[] {
  const corrected = new Set(log.flatMap(({ corrects }) => (corrects ? [corrects] : [])));
  return log.filter(({ id }) => !corrected.has(id));
}

/** The log as people see it, corrected lines among it, each reading with what the forecast made of it. */
export function logShown(log: readonly KeptEntry[], asked: FoodCook | undefined, verdicts: readonly ReadingVerdict[]): FoodEntryView[] {
  const standingIds = new Set(standing(log).map(({ id }) => id));
  const verdictAt = new Map((asked?.readings ?? []).map((reading, nth) => [`${reading.at}/${reading.tempC}`, verdicts[nth]]));
  return log.map(({ at, ...line }) => ({
    ...line, at: toIso(at), corrected: !standingIds.has(line.id),
    verdict: (line.kind === 'reading' && line.stage === 'cooking' && standingIds.has(line.id) && verdictAt.get(`${at}/${line.tempC}`)) || null,
  }));
}
