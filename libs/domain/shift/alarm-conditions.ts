import type { EpochS, PitId } from '../quantity/index.js';
import { ALARM_KINDS, type AlarmKind, type AlarmState, type AlarmStep, conditionHolds } from './alarm.js';

/** Wood counts as enough again only when it is more than needed by this much: the need is an estimate and moves about. */
const WOOD_SPARE_SPLITS = 2;
const WOOD_SPARE_FRAC = 0.05;

/** What alarms are judged by. */
export interface NightNow {
  readonly now: EpochS;
  /** The fires of the running shift. */
  readonly fires: readonly {
    readonly pitId: PitId;
    readonly lightAt: EpochS;
    readonly mode: 'start-up' | 'burning' | 'bed-nearly-out' | 'out';
    readonly latestSafeAt: EpochS | undefined;
  }[];
  /** Left out where it was not counted this time. */
  readonly wood?: { readonly splitsLeft: number; readonly splitsNeeded: number } | undefined;
}

/** Something abnormal that needs hands; `pitId` null for the whole yard. */
export interface AlarmCondition {
  readonly kind: AlarmKind;
  readonly pitId: PitId | null;
}

/** An alarm that is not back to normal. */
export interface OpenAlarm extends AlarmCondition {
  readonly id: string;
  readonly state: AlarmState;
  readonly acknowledgedAt: EpochS | undefined;
}

/**
 * The conditions that hold now. A fire is past its latest safe time from the second after it on; a due check is none,
 * it is a prompt. A bed counts from light-up on. Wood is short when less is left than needed, and stays so until
 * 2 splits or 5 % more than needed are there. Source: our own choice. Held to alarm-conditions.test.ts.
 *
 * @param open  the alarms that stand, for what needs a margin to end
 */
export function alarmConditions({ now, fires, wood }: NightNow, open: readonly OpenAlarm[]): AlarmCondition[] {
  const lit = fires.filter(({ lightAt }) => lightAt <= now);
  const late = lit.filter(({ latestSafeAt }) => latestSafeAt !== undefined && now > latestSafeAt);
  const low = lit.filter(({ mode }) => mode === 'bed-nearly-out' || mode === 'out');
  const wasShort = open.some(({ kind, state }) => kind === 'wood-short' && conditionHolds(state));
  const spare = wood && wasShort ? Math.max(WOOD_SPARE_SPLITS, WOOD_SPARE_FRAC * wood.splitsNeeded) : 0;
  const isShort = wood !== undefined && wood.splitsLeft < wood.splitsNeeded + spare;
  return [
    ...low.map(({ pitId }) => ({ kind: 'bed-nearly-out' as const, pitId })),
    ...late.map(({ pitId }) => ({ kind: 'past-latest-safe' as const, pitId })),
    ...(isShort ? [{ kind: 'wood-short' as const, pitId: null }] : []),
  ];
}

const isOf = (a: AlarmCondition) => (b: AlarmCondition) => a.kind === b.kind && a.pitId === b.pitId;

/** A step that an alarm takes. */
export interface AlarmTakes {
  readonly alarm: OpenAlarm;
  readonly step: AlarmStep;
}

/**
 * What a look at the night does to the alarms: conditions without an alarm, and a step for each alarm that takes one.
 * Asked twice with the outcome of the first, it finds nothing more to do. Wood that was not counted says nothing.
 * Source: [IEC62682]. Held to alarm-conditions.test.ts.
 */
export function alarmSteps(night: NightNow, open: readonly OpenAlarm[]): { readonly began: readonly AlarmCondition[]; readonly steps: readonly AlarmTakes[] } {
  const conditions = alarmConditions(night, open);
  const judged = open.filter(({ kind }) => kind !== 'wood-short' || night.wood !== undefined);
  const steps = judged.flatMap((alarm): AlarmTakes[] => {
    const holds = conditions.some(isOf(alarm));
    if (holds !== conditionHolds(alarm.state)) return [{ alarm, step: holds ? 'condition-began' : 'condition-ended' }];
    return isReminderDue(alarm, night.now) ? [{ alarm, step: 'reminder-due' }] : [];
  });
  return { began: conditions.filter((condition) => !open.some(isOf(condition))), steps };
}

function isReminderDue({ kind, state, acknowledgedAt }: OpenAlarm, now: EpochS): boolean {
  const { remindAfterS } = ALARM_KINDS[kind];
  return state === 'acknowledged' && remindAfterS !== undefined && acknowledgedAt !== undefined && now - acknowledgedAt >= remindAfterS;
}
