import { requireRange } from '../quantity/index.js';

/** A temperature read somewhere along the grate, zones counted from the fire end. */
export interface ZoneTemp {
  readonly zone: number;
  readonly tempC: number;
}
/** What was read at the two ends of a chamber; an end that nothing was read at is absent. */
export interface EndTemps {
  readonly fireEndTempC?: number;
  readonly stackEndTempC?: number;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * The two ends of a chamber from what was read along its zones: the first and the last third are the ends, by the middle of
 * each zone. A reading from the middle stretch stands for both ends where no end was read, and is left out otherwise.
 * Source: geometry.
 *
 * @param temps  readings, none to many per zone; a zone beyond the last counts as the last
 * @param zones  zones of the pit, 1 to 12
 */
export function endTempsOf(temps: readonly ZoneTemp[], zones: number): EndTemps {
  requireRange('zones', zones, 1, 12);
  const place = ({ zone }: ZoneTemp) => (Math.min(zone, zones - 1) + 0.5) / zones;
  const fireEnd = temps.filter((temp) => place(temp) <= 1 / 3).map(({ tempC }) => tempC);
  const stackEnd = temps.filter((temp) => place(temp) >= 2 / 3).map(({ tempC }) => tempC);
  const middle = temps.filter((temp) => place(temp) > 1 / 3 && place(temp) < 2 / 3).map(({ tempC }) => tempC);
  if (fireEnd.length + stackEnd.length === 0 && middle.length > 0) return { fireEndTempC: mean(middle), stackEndTempC: mean(middle) };
  return {
    ...(fireEnd.length > 0 && { fireEndTempC: mean(fireEnd) }),
    ...(stackEnd.length > 0 && { stackEndTempC: mean(stackEnd) }),
  };
}
