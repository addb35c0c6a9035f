import type { AlarmView, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../units/figures.js';
import type { SayAlarmWords } from '../words/alarm.js';

/** Whether it calls for somebody now: nothing keeps it quiet, and it is no mere consequence of another. */
export const callsNow = ({ state, shelf, suppressedBy, underId }: AlarmView): boolean => state === 'unacknowledged' && !shelf && !suppressedBy && !underId;
/** Whether its condition holds. */
export const holds = ({ state }: AlarmView): boolean => state === 'unacknowledged' || state === 'acknowledged';

/** An alarm with those that stand under it. */
export interface AlarmRow {
  readonly alarm: AlarmView;
  readonly under: number;
}

/** The alarms that are no mere consequence, the most pressing first as they come, with how many stand under each. */
export function alarmRows(alarms: readonly AlarmView[]): readonly AlarmRow[] {
  return alarms.filter(({ underId }) => underId === null).map((alarm) => ({ alarm, under: alarms.filter(({ underId }) => underId === alarm.id).length }));
}

/** The first alarm that calls this person. */
export const callsPerson = (alarms: readonly AlarmView[], personId: string): AlarmView | undefined =>
  alarms.find((alarm) => callsNow(alarm) && alarm.told?.people.some((id) => id === personId));

/** Who was told, and who is next; or why it does not call. */
export function toldWords({ told, shelf, suppressedBy, state, acknowledgedBy, returnedAt }: AlarmView, nameOf: (id: string) => string, say: SayAlarmWords, figures: Figures): string {
  if (state === 'returned-unacknowledged' && returnedAt) return say('over', { time: figures.time(returnedAt) });
  if (shelf) return say('shelvedTill', { time: figures.time(shelf.until), who: nameOf(shelf.by) });
  if (suppressedBy) return say(`quiet.${suppressedBy}`);
  if (acknowledgedBy) return say('noted', { who: nameOf(acknowledgedBy) });
  if (!told || told.people.length === 0) return say('toldNobody');
  return [say('told', { people: told.people.map(nameOf).join(', ') }), ...(told.next ? [say(`next.${told.next.tier}`, { time: figures.time(told.next.at) })] : [])].join('; ');
}

/** The pit and the probe that an alarm is about, by their names; neither for the whole yard. */
export function subjectOf({ pitId, probeId }: AlarmView, { pits }: Pick<YardState, 'pits'>): { readonly pit: string | undefined; readonly probe: string | undefined } {
  const pit = pits.find((one) => one.pit.id === pitId)?.pit;
  return { pit: pit?.name, probe: pit?.probes.find(({ id }) => id === probeId)?.name };
}

/** The same in one: 'Heron, fire end'; empty for the whole yard. */
export const subjectText = (alarm: AlarmView, state: Pick<YardState, 'pits'>): string => Object.values(subjectOf(alarm, state)).filter(Boolean).join(', ');
