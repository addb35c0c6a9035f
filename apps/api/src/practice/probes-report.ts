import { type AlarmRates, type Called, type PersonRate, RATE_TARGETS, ratesOf } from '@stokehold/domain/alarm';
import type { PitSettings } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, MINUTE_S, type PersonId, type PitId, toIso } from '@stokehold/domain/quantity';
import type { FaultKind, ProbeFault } from './probe-faults.js';

/** When a fault was told, as it stands in the readings. */
export interface FaultTold {
  readonly fault: ProbeFault;
  readonly suspectAt: EpochS | undefined;
  readonly badAt: EpochS | undefined;
}
/** Where a chamber truly was, minute by minute. */
export type TrueCourse = ReadonlyMap<PitId, ReadonlyMap<EpochS, number>>;

/** A stuck probe is doubted and called bad within so long, an open one called bad. Source: the yard's targets, our own choice. */
const TOLD_WITHIN_S: Readonly<Record<FaultKind, { readonly suspect: number; readonly bad?: number }>> = {
  stuck: { suspect: 600, bad: 1200 }, open: { suspect: 20, bad: 20 }, short: { suspect: 20 }, spikes: { suspect: 20 },
};

/** What the probes and the alarms of a night came to, beside the figures that they are held against. */
export interface ProbesReport {
  readonly faults: readonly {
    readonly pit: string; readonly kind: FaultKind; readonly suspectAfterS: number | null; readonly badAfterS: number | null; readonly inTime: boolean;
  }[];
  readonly alarms: Omit<AlarmRates, 'people' | 'badActors'> & {
    readonly byKind: Readonly<Record<string, number>>;
    readonly byPerson: readonly (Omit<PersonRate, 'personId'> & { readonly person: string; readonly byHour: readonly number[]; readonly withinTargets: boolean; readonly wasQuiet: boolean })[];
    readonly badActors: readonly { readonly kind: string; readonly pit: string; readonly calls: number }[];
    readonly targets: typeof RATE_TARGETS;
    /** Band alarms that called while the chamber truly lay inside its band, by more than sound probes are off. */
    readonly falseBand: readonly { readonly pit: string; readonly kind: string; readonly at: string; readonly trueTempC: number }[];
  };
}

/** What sound probes are off together, K: twice their lasting error. */
const PROBES_OFF_K = 2;

interface Night {
  readonly pits: readonly PitSettings[];
  readonly told: readonly FaultTold[];
  readonly called: readonly Called[];
  readonly course: TrueCourse;
  readonly from: EpochS;
  readonly until: EpochS;
  readonly nameOf: (personId: PersonId) => string;
}

export function probesReport(night: Night): ProbesReport {
  const { people, badActors, ...rates } = ratesOf(night.called, night);
  const byKind: Record<string, number> = {};
  for (const { kind } of night.called) byKind[kind] = (byKind[kind] ?? 0) + 1;
  const pitOf = (pitId: PitId | null) => night.pits.find(({ id }) => id === pitId)?.name ?? '';
  return {
    faults: night.told.map((told) => faultSaid(told, pitOf)),
    alarms: {
      ...rates, byKind, targets: RATE_TARGETS,
      byPerson: people.map(({ personId, ...rate }) => ({ person: night.nameOf(personId), ...rate, byHour: byHour(night, personId), withinTargets: isWithin(rate), wasQuiet: rate.calls <= RATE_TARGETS.quietNight })),
      badActors: badActors.map(({ kind, pitId, calls }) => ({ kind, pit: pitOf(pitId), calls })),
      falseBand: night.called.flatMap((one) => {
        const trueTempC = insideBand(one, night);
        return trueTempC === undefined ? [] : [{ pit: pitOf(one.pitId), kind: one.kind, at: toIso(one.at), trueTempC: Math.round(trueTempC * 10) / 10 }];
      }),
    },
  };
}

function faultSaid({ fault, suspectAt, badAt }: FaultTold, pitOf: (id: PitId) => string): ProbesReport['faults'][number] {
  const [suspectAfterS, badAfterS] = [suspectAt, badAt].map((at) => (at === undefined ? null : at - fault.from)) as [number | null, number | null];
  const within = TOLD_WITHIN_S[fault.kind];
  const inTime = suspectAfterS !== null && suspectAfterS <= within.suspect && (within.bad === undefined || (badAfterS !== null && badAfterS <= within.bad));
  return { pit: pitOf(fault.pitId), kind: fault.kind, suspectAfterS, badAfterS, inTime };
}

/** What holds on any night, also a bad one. */
const isWithin = ({ meanPerTenMinutes, mostInTenMinutes }: Omit<PersonRate, 'personId'>) =>
  meanPerTenMinutes <= RATE_TARGETS.meanPerTenMinutes && mostInTenMinutes <= RATE_TARGETS.mostPerTenMinutes;

/** Calls of a person in each hour of the night. */
function byHour({ called, from, until }: Pick<Night, 'called' | 'from' | 'until'>, personId: PersonId): number[] {
  const own = called.filter(({ people }) => people.includes(personId));
  return Array.from({ length: Math.ceil((until - from) / HOUR_S) }, (_, hour) => own.filter(({ at }) => Math.min(Math.floor((at - from) / HOUR_S), Math.ceil((until - from) / HOUR_S) - 1) === hour).length);
}

/** Where a chamber truly was that lay inside its band, by more than sound probes are off, while it was called out of it. */
function insideBand({ kind, pitId, at }: Called, { pits, course }: Pick<Night, 'pits' | 'course'>): number | undefined {
  if (kind !== 'above-band' && kind !== 'below-band') return undefined;
  const band = pits.find(({ id }) => id === pitId)?.band;
  const tempC = pitId && course.get(pitId)?.get((Math.floor(at / MINUTE_S) * MINUTE_S) as EpochS);
  if (!band || tempC === undefined || tempC === null) return undefined;
  return (kind === 'above-band' ? tempC < band.highC - PROBES_OFF_K : tempC > band.lowC + PROBES_OFF_K) ? tempC : undefined;
}
