import type { RecordReadings, SentReading } from '@stokehold/domain/contract';
import { type EpochS, fromIso, type ProbeId } from '@stokehold/domain/quantity';
import { type Calibration, calibrationAt, correctionOf, type Raw, shownTempC } from '@stokehold/domain/reading';
import { deviceTime } from '@stokehold/domain/shift';
import type { AsideBecause } from './reading-aside.row.js';

/** A reading that could not be 60 days old, and not a day ahead of the clock. Source: our own choice; raw readings are kept two months. */
const OLDEST_S = 60 * 86_400;
const AHEAD_S = 86_400;
/** A device whose clock is off by more than this has none. */
const CLOCKS_APART_S = 86_400;

/** A reading as it came, with what the clocks say. */
export interface Timed {
  readonly sent: SentReading;
  readonly source: string;
  readonly deviceTakenAt: EpochS;
  readonly takenAt: EpochS;
}
/** A reading of a known probe. */
export interface Reading {
  readonly probeId: ProbeId;
  readonly deviceTakenAt: EpochS;
  readonly takenAt: EpochS;
  /** As the sensor had it; undefined where it gave a fault away. */
  readonly shownC: number | undefined;
  readonly fault?: 'open' | 'short' | undefined;
  /** Corrected. */
  readonly tempC: number | undefined;
}

/** The readings of a command by the device's clock and by the corrected one. */
export function timed({ readings, sentAt }: Pick<RecordReadings, 'readings' | 'sentAt'>, { now: arrivedAt, aheadS }: { readonly now: EpochS; readonly aheadS: number }): Timed[] {
  const sent = sentAt === undefined ? {} : { sentAt: fromIso(sentAt) };
  return readings.map((reading) => {
    const deviceTakenAt = fromIso(reading.takenAt);
    return { sent: reading, source: reading.source ?? reading.probeId!, deviceTakenAt, takenAt: deviceTime({ deviceAt: deviceTakenAt, ...sent, arrivedAt, aheadS }).at };
  });
}

/** Why a reading cannot be used, if so. */
export function asideBecause({ takenAt, deviceTakenAt }: Timed, probeId: ProbeId | undefined, arrivedAt: EpochS): AsideBecause | undefined {
  const isImpossible = [takenAt, deviceTakenAt].some((at) => at < arrivedAt - OLDEST_S || at > arrivedAt + AHEAD_S) || Math.abs(takenAt - deviceTakenAt) > CLOCKS_APART_S;
  return isImpossible ? 'time-impossible' : probeId === undefined ? 'probe-unknown' : undefined;
}

/** What a sensor gave, in the domain's words. */
export function rawOf({ tempC, tempF, typeK, pt100, ntc, fault }: SentReading): Raw {
  if (fault) return { kind: 'fault', fault };
  if (typeK) return { kind: 'type-k', ...typeK };
  if (pt100) return { kind: 'pt100', ...pt100 };
  if (ntc) return { kind: 'thermistor', ...ntc };
  return { kind: 'temp', tempC: tempC ?? (tempF! - 32) / 1.8 };
}

/** A reading of a known probe as a temperature, corrected as its probe was corrected at that time. */
export function readingOf({ sent, deviceTakenAt, takenAt }: Timed, probeId: ProbeId, calibrations: readonly Calibration[]): Reading {
  const shown = shownTempC(rawOf(sent));
  if (!shown.ok) return { probeId, deviceTakenAt, takenAt, shownC: undefined, fault: shown.refusal, tempC: undefined };
  const against = calibrationAt(calibrations, takenAt)?.against ?? [];
  return { probeId, deviceTakenAt, takenAt, shownC: shown.value, tempC: correctionOf(against)(shown.value) };
}
