import { MOST_READINGS, type PitSettings, type SentReading } from '@stokehold/domain/contract';
import { type EpochS, later, MINUTE_S, type PitId, randomStream, type RandomStream, seedFrom, toIso } from '@stokehold/domain/quantity';
import { FaultyProbes, type ProbeFault } from './probe-faults.js';
import type { TrueCourse } from './probes-report.js';
import type { NightTruth } from './truth.js';

const READ_EVERY_S = 2 * MINUTE_S;
/** Probes that may fail are read as a gateway reads them. */
const READ_FAULTY_EVERY_S = 10;
/** A probe's noise and its lasting error, K. */
const PROBE_SD_K = 0.8;
const PROBE_BIAS_SD_K = 1;

/** The probes of a practice night: what each shows of the true fires, sound or faulty, and the gateway that sends it. */
export class NightProbes {
  readonly faults: readonly ProbeFault[];
  private readonly biases: ReadonlyMap<string, number>;
  private readonly noise: RandomStream;
  private readonly faulty: FaultyProbes | undefined;
  /** Where the chambers truly were, and the zones a minute ago. */
  private readonly wentBy = new Map<PitId, Map<EpochS, number>>();
  private readonly zonesBefore = new Map<PitId, readonly number[]>();

  constructor(
    private readonly night: {
      readonly pits: readonly PitSettings[]; readonly truth: NightTruth; readonly seed: number; readonly faults: readonly ProbeFault[];
      /** Done once the house has kept what was sent. */
      readonly send: (readings: readonly SentReading[]) => Promise<unknown>;
    },
  ) {
    this.faults = night.faults;
    this.faulty = night.faults.length > 0 ? new FaultyProbes(night.faults) : undefined;
    this.noise = randomStream(seedFrom(night.seed, 'probes'));
    this.biases = new Map(night.pits.flatMap(({ probes }) => probes.map(({ id }) => [id, PROBE_BIAS_SD_K * this.noise.normal()])));
  }

  get course(): TrueCourse {
    return this.wentBy;
  }

  /** What is read and sent in the minute up to now. */
  async minute(now: EpochS): Promise<void> {
    this.noteCourse(now);
    const readings = this.faulty ? this.faultyReadings(now, this.faulty) : now % READ_EVERY_S === 0 ? this.readings(now) : [];
    for (let nth = 0; nth < readings.length; nth += MOST_READINGS) await this.night.send(readings.slice(nth, nth + MOST_READINGS));
    for (const { id } of this.night.pits) this.zonesBefore.set(id, this.night.truth.seen(id)?.zoneTempC ?? []);
  }

  private readings(now: EpochS): SentReading[] {
    return this.night.pits.flatMap((pit) => {
      const seen = this.night.truth.seen(pit.id);
      return seen ? pit.probes.map((probe) => ({ probeId: probe.id, takenAt: toIso(now), tempC: this.shown(pit, probe, seen.zoneTempC) })) : [];
    });
  }

  /** Six readings a probe and minute, between where its zone was a minute ago and where it is. */
  private faultyReadings(now: EpochS, faulty: FaultyProbes): SentReading[] {
    const { ambientTempC } = this.night.truth.sky();
    return this.night.pits.flatMap((pit) => {
      const [zones, before] = [this.night.truth.seen(pit.id)?.zoneTempC, this.zonesBefore.get(pit.id)];
      if (!zones || !before || before.length === 0) return [];
      return Array.from({ length: MINUTE_S / READ_FAULTY_EVERY_S }, (_, nth) => READ_FAULTY_EVERY_S * (nth + 1)).flatMap((s) => {
        const at = later(now, s - MINUTE_S);
        const between = zones.map((tempC, zone) => (before[zone] ?? tempC) + ((tempC - (before[zone] ?? tempC)) * s) / MINUTE_S);
        return pit.probes.map((probe) => ({ probeId: probe.id, takenAt: toIso(at), ...faulty.shown(probe.id, at, this.shown(pit, probe, between), ambientTempC) }));
      });
    });
  }

  private shown(pit: PitSettings, probe: PitSettings['probes'][number], zoneTempC: readonly number[]): number {
    const tempC = zoneTempC[Math.min(probe.zone, pit.zones.length - 1)] ?? 0;
    return Math.round((tempC + (this.biases.get(probe.id) ?? 0) + PROBE_SD_K * this.noise.normal()) * 10) / 10;
  }

  private noteCourse(now: EpochS): void {
    for (const { id, probes, zones } of this.night.pits) {
      const temps = this.night.truth.seen(id)?.zoneTempC;
      if (!temps || probes.length === 0) continue;
      const mean = probes.reduce((sum, { zone }) => sum + (temps[Math.min(zone, zones.length - 1)] ?? 0), 0) / probes.length;
      this.wentBy.set(id, (this.wentBy.get(id) ?? new Map<EpochS, number>()).set(now, mean));
    }
  }
}
