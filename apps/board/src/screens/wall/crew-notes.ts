import type { PersonOnShift, ShiftView } from '@stokehold/domain/contract';

/** What the crew line can say of somebody, in the order in which it matters. */
export type CrewNote =
  | { readonly say: 'late' | 'away'; readonly personId: string; readonly until: string | null }
  | { readonly say: 'on-break'; readonly personId: string }
  | { readonly say: 'break-at'; readonly personId: string; readonly at: string };

/** Whether somebody who should be there is not. */
export const isMissing = ({ say }: CrewNote): boolean => say === 'late' || say === 'away';

const ORDER: readonly CrewNote['say'][] = ['late', 'away', 'on-break', 'break-at'];

function noteOf(person: PersonOnShift): CrewNote | undefined {
  const { personId, presence, presenceUntil } = person;
  if (presence === 'late' || presence === 'away') return { say: presence, personId, until: presenceUntil };
  if (person.onBreak) return { say: 'on-break', personId };
  if (presence === 'gone-home') return undefined;
  const at = person.breaks
    .filter((one) => one.beganAt === null)
    .map((one) => one.plannedAt ?? one.earliestAt)
    .sort()[0];
  return at === undefined ? undefined : { say: 'break-at', personId, at };
}

/** Who is missing, who is on break, who breaks next: of the breaks to come the first one only. */
export function crewNotes(shift: ShiftView): readonly CrewNote[] {
  const notes = shift.people.map(noteOf).filter((note) => note !== undefined);
  const toCome = notes.filter((note) => note.say === 'break-at').sort((a, b) => a.at.localeCompare(b.at));
  return [...notes.filter((note) => note.say !== 'break-at'), ...toCome.slice(0, 1)].sort((a, b) => ORDER.indexOf(a.say) - ORDER.indexOf(b.say));
}
