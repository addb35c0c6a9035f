import { endTempsOf } from '@stokehold/domain/chamber';
import { type RawReading, runningAway } from '@stokehold/domain/fire';
import { type EpochS, MINUTE_S, type PitId } from '@stokehold/domain/quantity';
import type { Probe, RawOfProbe } from './readings.store.js';

/** A fire that runs away shows within so much time. */
export const LOOKS_BACK_S = 3 * MINUTE_S;

/**
 * Pits of which a probe climbs as no fed fire makes it. Each probe is looked at by itself and raw, before any mean or gate; a
 * probe in the middle stands for either end.
 */
export function pitsRunningAway(probes: readonly Probe[], readings: readonly RawOfProbe[], now: EpochS): PitId[] {
  const away = probes.filter((probe) => !probe.removed && climbs(probe, readings, now));
  return [...new Set(away.map(({ pitId }) => pitId))];
}

function climbs({ id, zone, zones }: Probe, readings: readonly RawOfProbe[], now: EpochS): boolean {
  const own = [...new Map(readings.filter(({ probeId }) => probeId === id).map(({ takenAt, tempC }) => [takenAt, { takenAt, tempC }])).values()];
  const raw: RawReading[] = own.sort((a, b) => a.takenAt - b.takenAt);
  const atFireEnd = endTempsOf([{ zone, tempC: 0 }], Math.max(1, zones)).fireEndTempC !== undefined;
  return runningAway({ fireEnd: atFireEnd ? raw : [], stackEnd: atFireEnd ? [] : raw, now }) !== undefined;
}
