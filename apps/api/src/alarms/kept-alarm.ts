import type { OpenAlarm, Tier } from '@stokehold/domain/alarm';
import { type CookId, type DeviceId, type EpochS, epochS, type PersonId, type PitId, type ProbeId } from '@stokehold/domain/quantity';
import type { AlarmRow } from './alarm.row.js';

/** An alarm as it is kept. */
export interface KeptAlarm extends OpenAlarm {
  readonly returnedAt: EpochS | undefined;
  readonly acknowledgedBy: PersonId | null;
  readonly underId: string | null;
  /** Since when it calls; undefined while it does not. */
  readonly calledAt: EpochS | undefined;
  readonly toldTier: Tier | null;
  readonly told: readonly PersonId[];
}

const at = (date: Date | null) => (date ? epochS(date.getTime() / 1000) : undefined);
const shelfOf = ({ shelvedUntil, shelvedBy, shelfWay }: AlarmRow): OpenAlarm['shelf'] =>
  shelvedUntil && shelfWay ? { until: epochS(shelvedUntil.getTime() / 1000), by: shelvedBy as PersonId, way: shelfWay } : null;

export const alarmOf = (row: AlarmRow): KeptAlarm => ({
  id: row.id,
  kind: row.kind,
  pitId: row.pitId as PitId | null,
  ...(row.cookId && { cookId: row.cookId as CookId }),
  ...(row.limitName && { limit: row.limitName }),
  ...(row.probeId && { probeId: row.probeId as ProbeId }),
  ...(row.deviceId && { deviceId: row.deviceId as DeviceId }),
  state: row.state,
  shelf: shelfOf(row),
  suppressedBy: row.suppressedBy,
  raisedAt: epochS(row.raisedAt.getTime() / 1000),
  returnedAt: at(row.returnedAt),
  acknowledgedAt: at(row.acknowledgedAt),
  acknowledgedBy: row.acknowledgedBy as PersonId | null,
  underId: row.underId,
  calledAt: at(row.calledAt),
  toldTier: row.toldTier,
  told: row.told as PersonId[],
});
