import type { CookId, DeviceId, EpochS, PitId, ProbeId } from '../quantity/index.js';
import type { OutOfBand } from './band.js';
import { ALARM_LIST, type AlarmKind, QUIET_AFTER_CHECK_S, QUIET_BEFORE_CHECK_S, WOOD_DEADBAND } from './list.js';
import { conditionHolds, type SuppressedBy } from './state.js';
import type { OpenAlarm } from './open.js';

/** A fire of the running shift. */
export interface FireNow {
  readonly pitId: PitId;
  readonly lightAt: EpochS;
  readonly mode: 'start-up' | 'burning' | 'bed-nearly-out' | 'out';
  readonly dueAt?: EpochS | undefined;
  readonly latestSafeAt: EpochS | undefined;
  /** When somebody looked at it last. */
  readonly lookedAt?: EpochS | undefined;
}

/** What alarms are judged by. What was not looked at this time is left out, and leaves its alarms as they stand. */
export interface NightNow {
  readonly now: EpochS;
  readonly fires: readonly FireNow[];
  /** Pits whose raw readings climb at this moment as no fed fire makes them. */
  readonly runningAway?: readonly PitId[] | undefined;
  /** Chambers out of their band; `comesBack`: the fire brings it back by itself, in the time that there is to act. */
  readonly bands?: readonly { readonly pitId: PitId; readonly side: OutOfBand; readonly comesBack: boolean }[] | undefined;
  /** Limits of food that are missed or about to be. */
  readonly food?: readonly { readonly cookId: CookId; readonly limit: string; readonly pitId: PitId | null }[] | undefined;
  readonly wood?: { readonly splitsLeft: number; readonly splitsNeeded: number } | undefined;
  /** Probes that are bad or missing. */
  readonly probes?: readonly { readonly probeId: ProbeId; readonly pitId: PitId }[] | undefined;
  readonly gateways?: readonly DeviceId[] | undefined;
  /** Pits onto whose firebox or stack gusts are forecast. */
  readonly gusts?: readonly PitId[] | undefined;
}

/** Something abnormal that needs hands; `pitId` null for the whole yard. */
export interface AlarmCondition {
  readonly kind: AlarmKind;
  readonly pitId: PitId | null;
  /** For a limit of food: whose, and which. */
  readonly cookId?: CookId | undefined;
  readonly limit?: string | undefined;
  readonly probeId?: ProbeId | undefined;
  readonly deviceId?: DeviceId | undefined;
}

/** Whether two conditions are of the same thing. */
export const isOf = (a: AlarmCondition) => (b: AlarmCondition): boolean =>
  a.kind === b.kind && (a.kind === 'food-limit' ? a.cookId === b.cookId && a.limit === b.limit : a.pitId === b.pitId && a.probeId === b.probeId && a.deviceId === b.deviceId);

/** Whether this look at the night could tell if the condition of such an alarm holds. */
export function isJudged({ kind }: AlarmCondition, night: NightNow): boolean {
  switch (kind) {
    case 'wood-short': return night.wood !== undefined;
    case 'food-limit': return night.food !== undefined;
    case 'above-band':
    case 'below-band': return night.bands !== undefined;
    case 'probe-failed': return night.probes !== undefined;
    case 'gateway-silent': return night.gateways !== undefined;
    case 'gust-ahead': return night.gusts !== undefined;
    case 'running-away':
    case 'bed-nearly-out':
    case 'past-latest-safe': return true;
  }
}

/**
 * The conditions that hold now. A fire is past its latest safe time from the second after it on; a due check is none, it is a prompt.
 * A temperature that runs away is told of every pit, burning or not. A bed counts from light-up on. Wood is short when less is left
 * than needed, and stays so until 2 splits or 5 % more than needed are there. What the list lets stand for a least time holds so long.
 * Source: our own choice. Held to conditions.test.ts.
 *
 * @param open  the alarms that stand, for what needs a margin to end
 */
export function alarmConditions(night: NightNow, open: readonly OpenAlarm[]): AlarmCondition[] {
  const { now, fires, wood, food = [], runningAway = [], bands = [], probes = [], gateways = [], gusts = [] } = night;
  const lit = fires.filter(({ lightAt }) => lightAt <= now);
  const late = lit.filter(({ latestSafeAt }) => latestSafeAt !== undefined && now > latestSafeAt);
  const low = lit.filter(({ mode }) => mode === 'bed-nearly-out' || mode === 'out');
  const found: AlarmCondition[] = [
    ...runningAway.map((pitId) => ({ kind: 'running-away' as const, pitId })),
    ...low.map(({ pitId }) => ({ kind: 'bed-nearly-out' as const, pitId })),
    ...food.map(({ cookId, limit, pitId }) => ({ kind: 'food-limit' as const, pitId, cookId, limit })),
    ...late.map(({ pitId }) => ({ kind: 'past-latest-safe' as const, pitId })),
    ...bands.map(({ pitId, side }) => ({ kind: side, pitId })),
    ...gusts.map((pitId) => ({ kind: 'gust-ahead' as const, pitId })),
    ...probes.map(({ pitId, probeId }) => ({ kind: 'probe-failed' as const, pitId, probeId })),
    ...gateways.map((deviceId) => ({ kind: 'gateway-silent' as const, pitId: null, deviceId })),
    ...(wood && isShort(wood, open) ? [{ kind: 'wood-short' as const, pitId: null }] : []),
  ];
  const lasting = open.filter(({ kind, state, raisedAt }) => conditionHolds(state) && now - raisedAt < ALARM_LIST[kind].leastS);
  return [...found, ...lasting.filter((alarm) => !found.some(isOf(alarm)))];
}

function isShort({ splitsLeft, splitsNeeded }: NonNullable<NightNow['wood']>, open: readonly OpenAlarm[]): boolean {
  const wasShort = open.some(({ kind, state }) => kind === 'wood-short' && conditionHolds(state));
  return splitsLeft < splitsNeeded + (wasShort ? Math.max(WOOD_DEADBAND.splits, WOOD_DEADBAND.frac * splitsNeeded) : 0);
}

/**
 * What keeps a condition from calling now: its fire was just looked at, or is about to be and the prompt says so already, or its
 * chamber comes back without anybody. An alarm asks for hands; what needs none is no call.
 */
export function suppressionOf({ kind, pitId }: AlarmCondition, { fires, bands, now }: NightNow): SuppressedBy | null {
  const fire = fires.find((one) => one.pitId === pitId);
  if (!fire || !ALARM_LIST[kind].suppressedByCheck) return null;
  if (fire.lookedAt !== undefined && now - fire.lookedAt < QUIET_AFTER_CHECK_S) return 'after-check';
  if (fire.dueAt !== undefined && fire.dueAt - now <= QUIET_BEFORE_CHECK_S) return 'check-due';
  return bands?.some((band) => band.pitId === pitId && band.side === kind && band.comesBack) ? 'comes-back' : null;
}
