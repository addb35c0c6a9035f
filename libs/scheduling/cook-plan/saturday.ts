import { epochS, type CookId, type EpochS, type PitId, type ServiceId } from '@stokehold/domain/quantity';
import type { CookPit, CookPlanProblem, CookWay, PlannedCook } from './problem.js';

/** Midnight before an invented Saturday. */
const MIDNIGHT = 1_790_380_800;
const at = (hours: number): EpochS => epochS(MIDNIGHT + Math.round(hours * 3600));

/** Equally likely times about a middle, a little longer on the long side: quantiles of a right-leaning spread. */
const spread = (middleH: number): readonly number[] => Array.from({ length: 200 }, (_, i) => {
  const z = (i + 0.5) / 100 - 1;
  return Math.round(middleH * 3600 * (1 + 0.16 * z + 0.05 * z * z * z));
});

const way = (tempC: number, middleH: number, wrapAfterH?: number): CookWay => ({ tempC, takesS: spread(middleH), outOf: 200, cents: wrapAfterH === undefined ? 0 : 220, ...(wrapAfterH !== undefined && { wrapAfterS: wrapAfterH * 3600 }) });

const pit = (name: string, areaM2: number): CookPit => ({
  id: name as PitId, areaM2, bearsKg: 170, warmUpS: 5400, crewSPerHour: 700,
  heats: [{ tempC: 113, woodKgPerHour: 3.4, woodCentsPerHour: 230 }, { tempC: 121, woodKgPerHour: 3.9, woodCentsPerHour: 262 }, { tempC: 130, woodKgPerHour: 4.5, woodCentsPerHour: 301 }],
});

type Kind = 'brisket' | 'shoulder' | 'ribs' | 'chicken';
const KINDS: Readonly<Record<Kind, Pick<PlannedCook, 'ways' | 'restLeastS' | 'keepMostS' | 'pieceKg'>>> = {
  brisket: { ways: [way(113, 13.5), way(121, 11), way(121, 9.6, 6), way(130, 9.2), way(130, 8.1, 5)], restLeastS: 5400, keepMostS: 8 * 3600, pieceKg: 6.2 },
  shoulder: { ways: [way(113, 11.5), way(121, 9.5), way(121, 8.4, 5), way(130, 8)], restLeastS: 3600, keepMostS: 7 * 3600, pieceKg: 3.9 },
  ribs: { ways: [way(113, 5.6), way(121, 4.8), way(130, 4.1)], restLeastS: 900, keepMostS: 3 * 3600, pieceKg: 1.6 },
  chicken: { ways: [way(121, 3), way(130, 2.6)], restLeastS: 600, keepMostS: 2 * 3600, pieceKg: 1.8 },
};

const cook = (name: string, kind: Kind, service: 'lunch' | 'supper', areaM2: number, massKg: number): PlannedCook => ({
  id: name as CookId, serviceId: service as ServiceId, areaM2, massKg, loadS: 540, wrapS: 720, unloadS: 420, ...KINDS[kind],
});

/** A Saturday of our own invention: lunch at half past eleven, supper at half past five, 14 cooks, 6 pits, five people. For tests and examples. */
export function inventedSaturday(): CookPlanProblem {
  return {
    from: at(-7), until: at(19),
    pits: [pit('north-1', 1.25), pit('north-2', 1.25), pit('north-3', 1.25), pit('south-1', 0.9), pit('south-2', 0.9), pit('long', 2.1)],
    services: [{ id: 'lunch' as ServiceId, readyBy: at(11.5) }, { id: 'supper' as ServiceId, readyBy: at(17.5) }],
    cooks: [
      cook('brisket a', 'brisket', 'lunch', 0.72, 50), cook('brisket b', 'brisket', 'lunch', 0.72, 50), cook('shoulder a', 'shoulder', 'lunch', 0.55, 39), cook('ribs a', 'ribs', 'lunch', 0.6, 22),
      cook('ribs b', 'ribs', 'lunch', 0.6, 22), cook('chicken a', 'chicken', 'lunch', 0.45, 22),
      cook('brisket c', 'brisket', 'supper', 0.9, 62), cook('brisket d', 'brisket', 'supper', 0.9, 62), cook('brisket e', 'brisket', 'supper', 0.72, 50), cook('shoulder b', 'shoulder', 'supper', 0.7, 51),
      cook('shoulder c', 'shoulder', 'supper', 0.55, 39), cook('ribs c', 'ribs', 'supper', 0.8, 29), cook('ribs d', 'ribs', 'supper', 0.8, 29), cook('chicken b', 'chicken', 'supper', 0.6, 29),
    ],
    crew: [{ from: at(-7), until: at(-1), people: 2 }, { from: at(-1), until: at(7), people: 3 }, { from: at(7), until: at(19), people: 5 }],
  };
}
