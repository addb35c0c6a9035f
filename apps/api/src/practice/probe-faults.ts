import type { PitSettings } from '@stokehold/domain/contract';
import { type EpochS, HOUR_S, later, MINUTE_S, type PitId, type ProbeId, randomStream, seedFrom } from '@stokehold/domain/quantity';

/** stuck: one value to the last digit. open: the converter flags it. short: reads the air. spikes: a leap every few minutes. */
export const FAULT_KINDS = ['stuck', 'open', 'short', 'spikes'] as const;
export type FaultKind = (typeof FAULT_KINDS)[number];
export interface ProbeFault {
  readonly probeId: ProbeId;
  readonly pitId: PitId;
  readonly kind: FaultKind;
  readonly from: EpochS;
  readonly until: EpochS;
}

/** Fires are lit and hot by then. */
const AFTER_S = 3 * HOUR_S;
const LASTS_S = HOUR_S;
const SPIKE_EVERY_S = 5 * MINUTE_S;
const SPIKE_K = 35;

/** One fault for each pit that has probes, each kind in turn, for an hour somewhere between the third hour and the last but one. */
export function drawFaults(pits: readonly PitSettings[], night: { readonly from: EpochS; readonly until: EpochS }, seed: number): ProbeFault[] {
  const random = randomStream(seedFrom(seed, 'probe faults'));
  return pits.filter(({ probes }) => probes.length > 0).map((pit, nth) => {
    const roomS = night.until - night.from - AFTER_S - 2 * LASTS_S;
    const from = later(night.from, AFTER_S + Math.floor((random.next() * Math.max(0, roomS)) / MINUTE_S) * MINUTE_S);
    const probe = pit.probes[Math.floor(random.next() * pit.probes.length)]!;
    return { probeId: probe.id, pitId: pit.id, kind: FAULT_KINDS[nth % FAULT_KINDS.length]!, from, until: later(from, LASTS_S) };
  });
}

export type Shown = { readonly tempC: number } | { readonly fault: 'open' };

/** Probes of which some fail for a while: makes what a sound probe would show into what this one shows. */
export class FaultyProbes {
  private readonly stuckAt = new Map<ProbeId, number>();

  constructor(readonly faults: readonly ProbeFault[]) {}

  shown(probeId: ProbeId, at: EpochS, tempC: number, ambientTempC: number): Shown {
    const fault = this.faults.find((one) => one.probeId === probeId && at >= one.from && at < one.until);
    switch (fault?.kind) {
      case undefined:
        return { tempC };
      case 'open':
        return { fault: 'open' };
      case 'short':
        return { tempC: ambientTempC };
      case 'spikes':
        return { tempC: (at - fault.from) % SPIKE_EVERY_S < 10 ? tempC + SPIKE_K : tempC };
      case 'stuck': {
        const stuck = this.stuckAt.get(probeId) ?? tempC;
        this.stuckAt.set(probeId, stuck);
        return { tempC: stuck };
      }
    }
  }
}
