import { type AlarmRates, type Called, ratesOf } from '@stokehold/domain/alarm';
import type { PitSettings } from '@stokehold/domain/contract';
import { type EpochS, MINUTE_S, type PitId } from '@stokehold/domain/quantity';
import type { ProbeFault } from './probe-faults.js';

/** When a fault was told, as it stands in the readings. */
export interface FaultTold {
  readonly fault: ProbeFault;
  readonly suspectAt: EpochS | undefined;
  readonly badAt: EpochS | undefined;
}
/** Where a chamber truly was, minute by minute. */
export type TrueCourse = ReadonlyMap<PitId, ReadonlyMap<EpochS, number>>;

/** What the probes and the alarms of a night came to. */
export interface ProbesReport {
  readonly faults: readonly { readonly pit: string; readonly kind: string; readonly suspectAfterS: number | null; readonly badAfterS: number | null }[];
  readonly alarms: Pick<AlarmRates, 'calls' | 'priorityFrac' | 'floodFrac' | 'chattering' | 'fleeting'> & {
    readonly byKind: Readonly<Record<string, number>>;
    readonly byPerson: readonly { readonly person: string; readonly calls: number; readonly mostInTenMinutes: number }[];
    /** Band alarms while the chamber truly lay inside its band, by more than sound probes are off. */
    readonly falseBand: number;
  };
}

/** What sound probes are off together, K: twice their lasting error. */
const PROBES_OFF_K = 2;

export function probesReport(night: {
  readonly pits: readonly PitSettings[]; readonly told: readonly FaultTold[]; readonly called: readonly Called[]; readonly course: TrueCourse;
  readonly from: EpochS; readonly until: EpochS; readonly nameOf: (personId: string) => string;
}): ProbesReport {
  const { people, calls, priorityFrac, floodFrac, chattering, fleeting } = ratesOf(night.called, night);
  const byKind: Record<string, number> = {};
  for (const { kind } of night.called) byKind[kind] = (byKind[kind] ?? 0) + 1;
  return {
    faults: night.told.map(({ fault, suspectAt, badAt }) => ({
      pit: night.pits.find(({ id }) => id === fault.pitId)?.name ?? '', kind: fault.kind,
      suspectAfterS: suspectAt === undefined ? null : suspectAt - fault.from, badAfterS: badAt === undefined ? null : badAt - fault.from,
    })),
    alarms: {
      calls, priorityFrac, floodFrac, chattering, fleeting, byKind,
      byPerson: people.map(({ personId, calls: own, mostInTenMinutes }) => ({ person: night.nameOf(personId), calls: own, mostInTenMinutes })),
      falseBand: night.called.filter((one) => isFalseBand(one, night)).length,
    },
  };
}

function isFalseBand({ kind, pitId, at }: Called, { pits, course }: { readonly pits: readonly PitSettings[]; readonly course: TrueCourse }): boolean {
  if (kind !== 'above-band' && kind !== 'below-band') return false;
  const band = pits.find(({ id }) => id === pitId)?.band;
  const tempC = pitId && course.get(pitId)?.get((Math.floor(at / MINUTE_S) * MINUTE_S) as EpochS);
  if (!band || tempC === undefined || tempC === null) return false;
  return kind === 'above-band' ? tempC < band.highC - PROBES_OFF_K : tempC > band.lowC + PROBES_OFF_K;
}
